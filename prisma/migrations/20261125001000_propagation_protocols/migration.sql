-- How a plant is propagated by a method: protocols, their versions, and the version each batch was started under.

CREATE TABLE protocol (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  method text NOT NULL CHECK (method IN ('seed', 'cutting', 'root-cutting', 'division')),
  -- Tells protocols of one plant and method apart, by the treatment they try; empty for the usual one.
  label text NOT NULL DEFAULT '' CHECK (length(label) <= 80),
  -- The version that new batches are started under.
  current_version_id uuid,
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id)
);
CREATE UNIQUE INDEX protocol_plant_key ON protocol (nursery_id, plant_id, method, label);

-- A version is written once: a batch keeps the one it was started under, whatever is learned later.
CREATE TABLE protocol_version (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  protocol_id uuid NOT NULL,
  number int NOT NULL CHECK (number > 0),
  made_on date NOT NULL,
  person_id uuid REFERENCES person (id),
  -- Seeds to a cell or hole, and the cells it is sown into; pots come from the stages.
  seeds_per_cell int CHECK (seeds_per_cell BETWEEN 1 AND 200),
  start_unit text NOT NULL CHECK (start_unit IN ('cell', 'tray', 'piece', 'pack')),
  start_container_id uuid,
  target_container_id uuid,
  -- What the printed page says in words, by the fields of the contract.
  texts jsonb NOT NULL DEFAULT '{}',
  standing text NOT NULL,
  source text,
  change_note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, protocol_id) REFERENCES protocol (nursery_id, id),
  FOREIGN KEY (nursery_id, start_container_id) REFERENCES container (nursery_id, id),
  FOREIGN KEY (nursery_id, target_container_id) REFERENCES container (nursery_id, id)
);
CREATE UNIQUE INDEX protocol_version_number_key ON protocol_version (nursery_id, protocol_id, number);
ALTER TABLE protocol ADD FOREIGN KEY (nursery_id, current_version_id) REFERENCES protocol_version (nursery_id, id);

CREATE TABLE protocol_stage (
  nursery_id uuid NOT NULL,
  version_id uuid NOT NULL,
  position int NOT NULL CHECK (position >= 0),
  kind text NOT NULL CHECK (kind IN ('scarification', 'stratification', 'sowing', 'sticking', 'emergence', 'rooting', 'pricking-out', 'growing-on',
    'hardening', 'root-check', 'ready')),
  short_days int NOT NULL CHECK (short_days >= 0),
  usual_days int NOT NULL,
  long_days int NOT NULL CHECK (long_days <= 1830),
  duration_standing text NOT NULL,
  duration_source text,
  share numeric(7, 6) NOT NULL CHECK (share BETWEEN 0 AND 1),
  share_standing text NOT NULL,
  share_source text,
  season_from_md text,
  season_to_md text,
  rests boolean NOT NULL DEFAULT false,
  temperature_low_c numeric(4, 1),
  temperature_high_c numeric(4, 1),
  light text NOT NULL DEFAULT '' CHECK (light IN ('', 'dark', 'surface-light', 'shade', 'full-light')),
  depth_mm int CHECK (depth_mm BETWEEN 0 AND 500),
  medium text NOT NULL DEFAULT '',
  container_id uuid,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, version_id, position),
  FOREIGN KEY (nursery_id, version_id) REFERENCES protocol_version (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id),
  CHECK (short_days <= usual_days AND usual_days <= long_days),
  CHECK (num_nonnulls(season_from_md, season_to_md) IN (0, 2)),
  CHECK (temperature_low_c IS NULL OR temperature_high_c IS NULL OR temperature_low_c <= temperature_high_c)
);
CREATE UNIQUE INDEX protocol_stage_kind_key ON protocol_stage (nursery_id, version_id, kind);

SELECT keep_within_nursery('protocol'::regclass, 'SELECT, INSERT, UPDATE');
SELECT keep_within_nursery('protocol_version'::regclass, 'SELECT, INSERT');
SELECT keep_within_nursery('protocol_stage'::regclass, 'SELECT, INSERT');
CREATE TRIGGER protocol_is_kept BEFORE DELETE OR TRUNCATE ON protocol FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER protocol_version_is_kept BEFORE DELETE OR TRUNCATE ON protocol_version FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
CREATE TRIGGER protocol_stage_is_kept BEFORE DELETE OR TRUNCATE ON protocol_stage FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();

ALTER TABLE batch
  ADD COLUMN protocol_version_id uuid,
  -- The middle expectation beside the cautious one, both written only by entries on the batch.
  ADD COLUMN usual_units int NOT NULL DEFAULT 0 CHECK (usual_units >= 0),
  -- The batch of packs that this one's seed was drawn from.
  ADD COLUMN parent_batch_id uuid,
  ADD COLUMN seeds_grams numeric(12, 3) CHECK (seeds_grams > 0),
  -- Where it is in its protocol, reckoned from its entries: the stage, since when, when the next is due, and when it is late.
  ADD COLUMN stage_position int,
  ADD COLUMN stage_kind text,
  ADD COLUMN stage_begun_on date,
  ADD COLUMN stage_due_on date,
  ADD COLUMN stage_late_on date,
  ADD FOREIGN KEY (nursery_id, protocol_version_id) REFERENCES protocol_version (nursery_id, id),
  ADD FOREIGN KEY (nursery_id, parent_batch_id) REFERENCES batch (nursery_id, id);
UPDATE batch SET usual_units = cautious_units WHERE cautious_units > 0;
CREATE INDEX batch_protocol_idx ON batch (nursery_id, protocol_version_id) WHERE protocol_version_id IS NOT NULL;
CREATE INDEX batch_parent_idx ON batch (nursery_id, parent_batch_id) WHERE parent_batch_id IS NOT NULL;
CREATE INDEX batch_plant_idx ON batch (nursery_id, plant_id, method);
