-- The clocks' rules and the planting windows. The rule a lot is bound by is stored on the lot.

CREATE TABLE pot_life_rule (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  basis text NOT NULL CHECK (basis IN ('confined', 'container', 'no-winter')),
  span text,
  lot_id uuid,
  plant_id uuid,
  container_id uuid,
  genus text,
  root_habit text CHECK (root_habit IN ('taproot', 'fibrous', 'rhizome', 'tuber', 'woody')),
  carry_max_days int CHECK (carry_max_days BETWEEN 0 AND 366),
  carry_grace_days int CHECK (carry_grace_days BETWEEN 0 AND 366),
  standing text NOT NULL,
  source text,
  note text NOT NULL DEFAULT '',
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id),
  CHECK ((basis = 'no-winter') = (span IS NULL)),
  CHECK ((carry_max_days IS NULL) = (carry_grace_days IS NULL)),
  CHECK (num_nonnulls(lot_id, plant_id, genus, root_habit) = 1)
);

CREATE TABLE planting_window (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  opens_md text NOT NULL CHECK (opens_md ~ '^\d\d-\d\d$'),
  closes_md text NOT NULL CHECK (closes_md ~ '^\d\d-\d\d$'),
  max_container_ml int CHECK (max_container_ml > 0),
  region text,
  standing text NOT NULL,
  source text,
  note text NOT NULL DEFAULT '',
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id)
);
