-- Where propagules and bought plants came from.

CREATE TABLE source (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  code text NOT NULL,
  plant_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('seed-collection', 'bought-seed', 'mother-plants', 'in-ground-bed', 'bought-plants', 'unknown')),
  provenance text NOT NULL DEFAULT '',
  seed_zone text,
  origin text NOT NULL DEFAULT 'unknown' CHECK (origin IN ('wild', 'cultivated', 'unknown')),
  -- The earliest possible day, and how exactly it is known.
  gathered_on date,
  gathered_precision text CHECK (gathered_precision IN ('day', 'month', 'season', 'year')),
  collector text,
  permit text,
  vendor text,
  vendor_lot text,
  pesticide_statement text,
  mother_lot_id uuid,
  note text NOT NULL DEFAULT '',
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id)
);
CREATE UNIQUE INDEX source_code_key ON source (nursery_id, code);
CREATE INDEX source_plant_idx ON source (nursery_id, plant_id);

-- One running number for every code of a plant and year, so that a code names one thing only.
CREATE TABLE code_counter (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  prefix text NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (nursery_id, prefix)
);
