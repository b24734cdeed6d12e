-- Gardens are looked at some weeks after they were planted: the plantings of a year and a half, among all entries of that time.
CREATE INDEX entry_planted_idx ON entry (nursery_id, happened_on) WHERE kind = 'plant';
