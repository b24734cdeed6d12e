-- Lots and batches, the ledger, and what hangs on them.

CREATE TABLE entry (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  version bigint NOT NULL,
  kind text NOT NULL CHECK (kind IN ('opening', 'receive', 'start', 'count', 'pot', 'pot-up', 'convert', 'split', 'merge', 'move', 'lose',
    're-identify', 'hold', 'release', 'pull', 'plant', 'return', 'sell', 'give', 'observe', 'treat', 'close', 'reverse')),
  -- The day it happened, which may lie before the day it was written down.
  happened_on date NOT NULL,
  recorded_at timestamptz NOT NULL,
  person_id uuid REFERENCES person (id),
  reverses_id uuid,
  cause text,
  note text NOT NULL DEFAULT '',
  details jsonb NOT NULL DEFAULT '{}',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, reverses_id) REFERENCES entry (nursery_id, id),
  CHECK ((kind = 'reverse') = (reverses_id IS NOT NULL))
);
CREATE UNIQUE INDEX entry_reverses_key ON entry (nursery_id, reverses_id);
CREATE INDEX entry_version_idx ON entry (nursery_id, version);
CREATE INDEX entry_happened_idx ON entry (nursery_id, happened_on);

CREATE TABLE lot (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  code text NOT NULL,
  plant_id uuid NOT NULL,
  source_id uuid NOT NULL,
  container_id uuid NOT NULL,
  created_entry_id uuid NOT NULL,
  potted_on date NOT NULL,
  potted_precision text NOT NULL DEFAULT 'day' CHECK (potted_precision IN ('day', 'month', 'season', 'year')),
  confined_on date,
  confined_standing text NOT NULL DEFAULT 'recorded' CHECK (confined_standing IN ('recorded', 'assumed')),
  container_on date,
  container_standing text NOT NULL DEFAULT 'recorded' CHECK (container_standing IN ('recorded', 'assumed')),
  -- Until the root ball was checked and holds, readiness is only expected.
  ready_on date,
  root_checked_on date,
  count_kind text NOT NULL DEFAULT 'counted' CHECK (count_kind IN ('counted', 'sampled', 'estimated')),
  plant_by_on date,
  plant_by_state text NOT NULL DEFAULT 'unlimited' CHECK (plant_by_state IN ('window', 'limit-only', 'no-window', 'winter-carry', 'unlimited')),
  limit_on date,
  rule_id uuid,
  window_id uuid,
  next_opens_on date,
  -- The day its last unit left; null while anything of it stands or is staged.
  closed_on date,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id),
  FOREIGN KEY (nursery_id, created_entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, rule_id) REFERENCES pot_life_rule (nursery_id, id),
  FOREIGN KEY (nursery_id, window_id) REFERENCES planting_window (nursery_id, id)
);
CREATE UNIQUE INDEX lot_code_key ON lot (nursery_id, code);
CREATE INDEX lot_open_plant_by_idx ON lot (nursery_id, plant_by_on, code) WHERE closed_on IS NULL;
CREATE INDEX lot_open_item_idx ON lot (nursery_id, plant_id, container_id) WHERE closed_on IS NULL;
CREATE INDEX lot_source_idx ON lot (nursery_id, source_id);
CREATE INDEX lot_created_entry_idx ON lot (nursery_id, created_entry_id);
ALTER TABLE source ADD FOREIGN KEY (nursery_id, mother_lot_id) REFERENCES lot (nursery_id, id);
ALTER TABLE pot_life_rule ADD FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id);

CREATE TABLE batch (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  code text NOT NULL,
  plant_id uuid NOT NULL,
  source_id uuid NOT NULL,
  created_entry_id uuid NOT NULL,
  method text NOT NULL CHECK (method IN ('seed', 'cutting', 'root-cutting', 'division')),
  unit text NOT NULL CHECK (unit IN ('cell', 'tray', 'piece', 'pack')),
  container_id uuid,
  started_on date NOT NULL,
  seeds_sown int CHECK (seeds_sown > 0),
  -- Clocks of what stands in cells: first emergence or first rooted count.
  confined_on date,
  container_on date,
  -- Plants seen alive at the last count that has not been reversed.
  emerged_units int CHECK (emerged_units >= 0),
  emerged_on date,
  target_container_id uuid,
  cautious_units int NOT NULL DEFAULT 0 CHECK (cautious_units >= 0),
  ready_on date,
  plant_by_on date,
  plant_by_state text NOT NULL DEFAULT 'unlimited' CHECK (plant_by_state IN ('window', 'limit-only', 'no-window', 'winter-carry', 'unlimited')),
  limit_on date,
  rule_id uuid,
  window_id uuid,
  next_opens_on date,
  -- Kept open for a second winter on this day, although nothing more came up.
  second_winter_on date,
  closed_on date,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, source_id) REFERENCES source (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id),
  FOREIGN KEY (nursery_id, target_container_id) REFERENCES container (nursery_id, id),
  FOREIGN KEY (nursery_id, created_entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, rule_id) REFERENCES pot_life_rule (nursery_id, id),
  FOREIGN KEY (nursery_id, window_id) REFERENCES planting_window (nursery_id, id)
);
CREATE UNIQUE INDEX batch_code_key ON batch (nursery_id, code);
CREATE INDEX batch_open_idx ON batch (nursery_id, plant_by_on, code) WHERE closed_on IS NULL;
CREATE INDEX batch_source_idx ON batch (nursery_id, source_id);

CREATE TABLE batch_count (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  batch_id uuid NOT NULL,
  entry_id uuid NOT NULL,
  counted_on date NOT NULL,
  count_kind text NOT NULL CHECK (count_kind IN ('counted', 'sampled', 'estimated')),
  emerged_units int NOT NULL CHECK (emerged_units >= 0),
  unexplained_units int NOT NULL DEFAULT 0 CHECK (unexplained_units >= 0),
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id)
);
CREATE INDEX batch_count_batch_idx ON batch_count (nursery_id, batch_id, counted_on);

-- What arrived with a lot that was on hand at the beginning or was bought.
CREATE TABLE intake (
  nursery_id uuid NOT NULL,
  lot_id uuid NOT NULL,
  entry_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('opening', 'bought')),
  form text NOT NULL CHECK (form IN ('plugs', 'bare-root', 'pots', 'in-ground')),
  arrived_on date NOT NULL,
  arrived_precision text NOT NULL CHECK (arrived_precision IN ('day', 'month', 'season', 'year')),
  invoiced_units int CHECK (invoiced_units >= 0),
  received_units int NOT NULL CHECK (received_units > 0),
  sown_on date,
  PRIMARY KEY (nursery_id, lot_id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id)
);

-- Accounts: a lot or batch at a place, a lot staged for an order line, or the outside. Only the first two carry a balance.
CREATE TABLE account (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('place', 'staged', 'outside')),
  lot_id uuid,
  batch_id uuid,
  place_id uuid,
  line_id uuid,
  outside text CHECK (outside IN ('opening', 'bought', 'started', 'found', 'planted', 'sold', 'given', 'lost', 'unexplained')),
  units int NOT NULL DEFAULT 0 CHECK (units >= 0),
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, batch_id) REFERENCES batch (nursery_id, id),
  FOREIGN KEY (nursery_id, place_id) REFERENCES place (nursery_id, id),
  CHECK (CASE kind
    WHEN 'place' THEN num_nonnulls(lot_id, batch_id) = 1 AND place_id IS NOT NULL AND line_id IS NULL AND outside IS NULL
    WHEN 'staged' THEN lot_id IS NOT NULL AND line_id IS NOT NULL AND batch_id IS NULL AND place_id IS NULL AND outside IS NULL
    ELSE outside IS NOT NULL AND num_nonnulls(lot_id, batch_id, place_id, line_id) = 0 AND units = 0 END)
);
CREATE INDEX account_lot_idx ON account (nursery_id, lot_id);
CREATE INDEX account_batch_idx ON account (nursery_id, batch_id);
CREATE INDEX account_line_idx ON account (nursery_id, line_id) WHERE line_id IS NOT NULL;
CREATE INDEX account_live_lot_idx ON account (nursery_id, lot_id) INCLUDE (kind, place_id, units) WHERE units > 0;
CREATE INDEX account_live_place_idx ON account (nursery_id, place_id) WHERE units > 0;

CREATE TABLE movement (
  nursery_id uuid NOT NULL,
  entry_id uuid NOT NULL,
  line int NOT NULL,
  from_account_id uuid NOT NULL,
  to_account_id uuid NOT NULL,
  from_units int NOT NULL CHECK (from_units >= 0),
  to_units int NOT NULL CHECK (to_units >= 0),
  PRIMARY KEY (nursery_id, entry_id, line),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, from_account_id) REFERENCES account (nursery_id, id),
  FOREIGN KEY (nursery_id, to_account_id) REFERENCES account (nursery_id, id),
  CHECK (from_units + to_units > 0),
  CHECK (from_account_id <> to_account_id)
);
CREATE INDEX movement_from_idx ON movement (nursery_id, from_account_id);
CREATE INDEX movement_to_idx ON movement (nursery_id, to_account_id);

-- Who came from whom; kept by the database from the movements themselves.
CREATE TABLE lineage (
  nursery_id uuid NOT NULL,
  child_lot_id uuid NOT NULL,
  parent_id uuid NOT NULL,
  parent_kind text NOT NULL CHECK (parent_kind IN ('lot', 'batch')),
  PRIMARY KEY (nursery_id, child_lot_id, parent_id),
  FOREIGN KEY (nursery_id, child_lot_id) REFERENCES lot (nursery_id, id)
);
CREATE INDEX lineage_parent_idx ON lineage (nursery_id, parent_id);

-- What an entry without movements is about (a hold, an observation, a treatment).
CREATE TABLE entry_subject (
  nursery_id uuid NOT NULL,
  entry_id uuid NOT NULL,
  subject_id uuid NOT NULL,
  subject_kind text NOT NULL CHECK (subject_kind IN ('lot', 'batch', 'place', 'source', 'line')),
  PRIMARY KEY (nursery_id, entry_id, subject_id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id)
);
CREATE INDEX entry_subject_idx ON entry_subject (nursery_id, subject_id);

CREATE TABLE hold (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  lot_id uuid NOT NULL,
  reason text NOT NULL CHECK (reason IN ('quarantine', 'treated', 'mother-stock', 'inspector')),
  entry_id uuid NOT NULL,
  held_on date NOT NULL,
  released_entry_id uuid,
  released_on date,
  release_reason text,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, lot_id) REFERENCES lot (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, released_entry_id) REFERENCES entry (nursery_id, id),
  CHECK (num_nonnulls(released_entry_id, released_on) IN (0, 2))
);
CREATE UNIQUE INDEX hold_open_key ON hold (nursery_id, lot_id, reason) WHERE released_on IS NULL;

CREATE TABLE treatment (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  entry_id uuid NOT NULL,
  place_id uuid,
  product text NOT NULL CHECK (length(product) BETWEEN 1 AND 120),
  registration_no text,
  rate text,
  applicator text NOT NULL,
  target text NOT NULL DEFAULT '',
  treated_at timestamptz NOT NULL,
  reentry_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id),
  FOREIGN KEY (nursery_id, place_id) REFERENCES place (nursery_id, id)
);
CREATE INDEX treatment_entry_idx ON treatment (nursery_id, entry_id);

CREATE TABLE observation (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  entry_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('root-ball', 'bloom', 'pest', 'dormant', 'thinned', 'height', 'note')),
  result text,
  amount int,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, entry_id) REFERENCES entry (nursery_id, id)
);
CREATE INDEX observation_entry_idx ON observation (nursery_id, entry_id);
