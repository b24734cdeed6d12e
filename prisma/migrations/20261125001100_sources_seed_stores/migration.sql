-- What a source holds: seed by weight, how good it was found to be, and what was blended into it.

ALTER TABLE source
  ADD COLUMN raw_grams numeric(12, 3) CHECK (raw_grams >= 0),
  ADD COLUMN cleaned_grams numeric(12, 3) CHECK (cleaned_grams >= 0),
  ADD COLUMN purity numeric(7, 6) CHECK (purity BETWEEN 0 AND 1),
  ADD COLUMN seeds_per_gram numeric(12, 3) CHECK (seeds_per_gram > 0),
  -- Viability falls within days: such seed is sown as it is gathered.
  ADD COLUMN sow_fresh boolean NOT NULL DEFAULT false,
  -- Seed that dies when it dries.
  ADD COLUMN never_dry boolean NOT NULL DEFAULT false,
  ADD COLUMN storage text CHECK (storage IN ('room', 'cold-dry', 'cold-moist', 'frozen')),
  ADD COLUMN stored_on date;

-- The grams left of a source. Kept by the database from the movements of seed; the server's role cannot write it.
CREATE TABLE seed_store (
  nursery_id uuid NOT NULL,
  source_id uuid NOT NULL,
  grams numeric(12, 3) NOT NULL DEFAULT 0,
  PRIMARY KEY (nursery_id, source_id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  CONSTRAINT seed_not_negative CHECK (grams >= 0)
);

CREATE TABLE seed_movement (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  source_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('gathered', 'bought', 'cleaned', 'sown', 'tested', 'blended-out', 'blended-in', 'weighed', 'given', 'discarded', 'taken-back')),
  -- What came in, or less than nothing for what went out.
  grams numeric(12, 3) NOT NULL CHECK (grams <> 0),
  happened_on date NOT NULL,
  recorded_at timestamptz NOT NULL,
  person_id uuid REFERENCES person (id),
  command_id uuid NOT NULL,
  batch_id uuid,
  -- The ledger entry that used it, where one did: taking that back brings the seed back.
  entry_id uuid,
  reverses_id uuid,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, reverses_id) REFERENCES seed_movement (nursery_id, id),
  CHECK ((kind = 'taken-back') = (reverses_id IS NOT NULL))
);
CREATE INDEX seed_movement_source_idx ON seed_movement (nursery_id, source_id, happened_on);
CREATE INDEX seed_movement_entry_idx ON seed_movement (nursery_id, entry_id) WHERE entry_id IS NOT NULL;
CREATE UNIQUE INDEX seed_movement_reverses_key ON seed_movement (nursery_id, reverses_id);

CREATE FUNCTION apply_seed_movements() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  -- Opened first and summed after: a refused insert of a negative sum would not let a later one mend it.
  INSERT INTO seed_store (nursery_id, source_id) SELECT DISTINCT nursery_id, source_id FROM added ON CONFLICT DO NOTHING;
  UPDATE seed_store s SET grams = s.grams + d.grams
    FROM (SELECT nursery_id, source_id, sum(grams) AS grams FROM added GROUP BY nursery_id, source_id) d
   WHERE s.nursery_id = d.nursery_id AND s.source_id = d.source_id;
  RETURN NULL;
END $$;
CREATE TRIGGER seed_movement_apply AFTER INSERT ON seed_movement REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION apply_seed_movements();
CREATE TRIGGER seed_movement_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON seed_movement FOR EACH STATEMENT EXECUTE FUNCTION refuse_ledger_change();

-- What a blend was made of, by weight.
CREATE TABLE source_part (
  nursery_id uuid NOT NULL,
  source_id uuid NOT NULL,
  part_source_id uuid NOT NULL,
  grams numeric(12, 3) NOT NULL CHECK (grams > 0),
  PRIMARY KEY (nursery_id, source_id, part_source_id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  FOREIGN KEY (nursery_id, part_source_id) REFERENCES source (nursery_id, id),
  CHECK (source_id <> part_source_id)
);
CREATE INDEX source_part_of_idx ON source_part (nursery_id, part_source_id);

CREATE TABLE viability_test (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  source_id uuid NOT NULL,
  tested_on date NOT NULL,
  method text NOT NULL CHECK (method IN ('germination', 'tetrazolium', 'cut')),
  seeds_per_replicate int NOT NULL CHECK (seeds_per_replicate > 0),
  -- Sound seeds of each replicate, in the order they were counted.
  replicates int[] NOT NULL CHECK (cardinality(replicates) BETWEEN 1 AND 16),
  hard_share numeric(7, 6) NOT NULL DEFAULT 0 CHECK (hard_share BETWEEN 0 AND 1),
  dormant_share numeric(7, 6) NOT NULL DEFAULT 0 CHECK (dormant_share BETWEEN 0 AND 1),
  mean_share numeric(7, 6) NOT NULL CHECK (mean_share BETWEEN 0 AND 1),
  -- Replicates that lie further apart than the published tolerance: the test is to be repeated.
  to_repeat boolean NOT NULL DEFAULT false,
  withdrawn_at timestamptz,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  CHECK (mean_share + hard_share + dormant_share <= 1)
);
CREATE INDEX viability_test_source_idx ON viability_test (nursery_id, source_id, tested_on);

SELECT keep_within_nursery('seed_store'::regclass, 'SELECT');
SELECT keep_within_nursery('seed_movement'::regclass, 'SELECT, INSERT');
SELECT keep_within_nursery('source_part'::regclass, 'SELECT, INSERT');
SELECT keep_within_nursery('viability_test'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER seed_store_is_kept BEFORE DELETE OR TRUNCATE ON seed_store FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER source_part_is_kept BEFORE DELETE OR TRUNCATE ON source_part FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER viability_test_is_kept BEFORE DELETE OR TRUNCATE ON viability_test FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
