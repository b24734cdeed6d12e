-- Plants under their scientific names, the names people call them, what is known of each and on whose word; containers.

CREATE TABLE plant (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  code text NOT NULL CHECK (code ~ '^[A-Z]{4,5}$'),
  scientific_name text NOT NULL CHECK (length(scientific_name) BETWEEN 3 AND 160),
  scientific_name_authorship text NOT NULL DEFAULT '',
  taxon_rank text NOT NULL,
  family text NOT NULL DEFAULT '',
  genus text NOT NULL,
  specific_epithet text,
  infraspecific_epithet text,
  cultivar_epithet text,
  vernacular_name text NOT NULL DEFAULT '',
  root_habit text NOT NULL CHECK (root_habit IN ('taproot', 'fibrous', 'rhizome', 'tuber', 'woody')),
  larval_host boolean NOT NULL DEFAULT false,
  dormant_months int[] NOT NULL DEFAULT '{}',
  last_emergence_md text CHECK (last_emergence_md ~ '^\d\d-\d\d$'),
  year_of_first_bloom int CHECK (year_of_first_bloom BETWEEN 1 AND 30),
  native_regions text[] NOT NULL DEFAULT '{}',
  handling text[] NOT NULL DEFAULT '{}',
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id)
);
CREATE UNIQUE INDEX plant_code_key ON plant (nursery_id, code);
CREATE UNIQUE INDEX plant_scientific_name_key ON plant (nursery_id, scientific_name);

-- Synonyms and common names; one common name may point at several plants, so the pair is unique and not the name.
CREATE TABLE plant_name (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  kind text NOT NULL CHECK (kind IN ('scientific', 'synonym', 'common')),
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 160),
  name_key text NOT NULL,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id)
);
CREATE UNIQUE INDEX plant_name_key ON plant_name (nursery_id, plant_id, kind, name_key);
CREATE INDEX plant_name_lookup_idx ON plant_name (nursery_id, name_key text_pattern_ops);

-- What is known of a plant beyond its names: the value, on whose word, and from where.
CREATE TABLE plant_fact (
  nursery_id uuid NOT NULL,
  plant_id uuid NOT NULL,
  field text NOT NULL CHECK (length(field) BETWEEN 1 AND 60),
  value jsonb NOT NULL,
  standing text NOT NULL,
  source text,
  note text,
  PRIMARY KEY (nursery_id, plant_id, field),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id)
);

CREATE TABLE container (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  code text NOT NULL CHECK (length(code) BETWEEN 1 AND 30),
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  -- 'ground' is a nursery bed: no pot, so no pot clock runs there.
  kind text NOT NULL CHECK (kind IN ('pot', 'tray', 'flat', 'ground')),
  volume_ml int CHECK (volume_ml > 0),
  depth_mm int CHECK (depth_mm > 0),
  width_mm int CHECK (width_mm > 0),
  length_mm int CHECK (length_mm > 0),
  cells int CHECK (cells > 0),
  trade_class text,
  standing text NOT NULL,
  source text,
  note text,
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id)
);
CREATE UNIQUE INDEX container_code_key ON container (nursery_id, code);
