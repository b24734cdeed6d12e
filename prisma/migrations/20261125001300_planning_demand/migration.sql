-- What the owner expects to need, what was ticked off, and how careful plans are.

ALTER TABLE nursery
  -- The confidence at which units to start are reckoned.
  ADD COLUMN plan_confidence numeric(4, 3) NOT NULL DEFAULT 0.9 CHECK (plan_confidence BETWEEN 0.5 AND 0.999),
  -- How many plants a protocol's figure weighs as when the nursery's own counts are added to it.
  ADD COLUMN prior_weight int NOT NULL DEFAULT 20 CHECK (prior_weight BETWEEN 1 AND 10000),
  -- Batches differ more than their counts alone would say, so that no share is taken to rest on more plants than this.
  ADD COLUMN evidence_limit int NOT NULL DEFAULT 400 CHECK (evidence_limit BETWEEN 10 AND 1000000),
  ADD COLUMN winter_survival numeric(7, 6) NOT NULL DEFAULT 0.9 CHECK (winter_survival BETWEEN 0 AND 1),
  ADD COLUMN winter_survival_standing text NOT NULL DEFAULT 'assumed';

CREATE TABLE expected_demand (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  container_id uuid NOT NULL,
  -- The first day of the season by which they are wanted.
  wanted_on date NOT NULL,
  units int NOT NULL CHECK (units > 0),
  -- What one plant is worth to the nursery, in the currency's smallest unit; it decides where space runs out.
  unit_value_minor int CHECK (unit_value_minor >= 0),
  note text NOT NULL DEFAULT '',
  withdrawn_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id)
);
CREATE INDEX expected_demand_open_idx ON expected_demand (nursery_id, wanted_on) WHERE withdrawn_at IS NULL;

-- Ticks of tasks that have no entry of their own. The key says which task of which thing on which day.
CREATE TABLE task_tick (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  task_key text NOT NULL CHECK (length(task_key) BETWEEN 3 AND 200),
  done_on date NOT NULL,
  person_id uuid REFERENCES person (id),
  note text NOT NULL DEFAULT '',
  taken_back_at timestamptz,
  PRIMARY KEY (nursery_id, id)
);
CREATE UNIQUE INDEX task_tick_standing_key ON task_tick (nursery_id, task_key) WHERE taken_back_at IS NULL;

SELECT keep_within_nursery('expected_demand'::regclass, 'SELECT, INSERT, UPDATE');
SELECT keep_within_nursery('task_tick'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER expected_demand_is_kept BEFORE DELETE OR TRUNCATE ON expected_demand FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER task_tick_is_kept BEFORE DELETE OR TRUNCATE ON task_tick FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
