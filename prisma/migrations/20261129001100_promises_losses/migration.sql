-- Lines that gave plants up without anybody changing their order: which command it was, how many, and of which lots and batches.
CREATE TABLE line_loss (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL DEFAULT gen_random_uuid(),
  line_id uuid NOT NULL,
  -- The command that caused it. The entry of the same id says more, where it made one.
  command_id uuid NOT NULL,
  cause text NOT NULL CHECK (cause IN ('entry', 'order', 'day', 'setting')),
  units int NOT NULL CHECK (units > 0),
  filled_before int NOT NULL,
  -- What it gave up of each lot and batch, and why: [{"supplyId", "units", "why"}].
  supplies jsonb NOT NULL,
  happened_on date NOT NULL,
  settled_on date,
  settled_how text CHECK (settled_how IN ('whole', 'set-aside')),
  settled_command_id uuid,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  UNIQUE (nursery_id, line_id, command_id),
  FOREIGN KEY (nursery_id, line_id) REFERENCES order_line (nursery_id, id),
  CHECK (num_nonnulls(settled_on, settled_how, settled_command_id) IN (0, 3)),
  CHECK (filled_before >= units)
);
CREATE INDEX line_loss_open_idx ON line_loss (nursery_id, line_id) WHERE settled_on IS NULL;

SELECT keep_within_nursery('line_loss'::regclass, 'SELECT, INSERT, UPDATE');
CREATE TRIGGER line_loss_is_kept BEFORE DELETE OR TRUNCATE ON line_loss FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
