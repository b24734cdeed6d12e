-- From a mother lot to the sources it gives, for tracing what came of it.
CREATE INDEX source_mother_lot_idx ON source (nursery_id, mother_lot_id) WHERE mother_lot_id IS NOT NULL;
