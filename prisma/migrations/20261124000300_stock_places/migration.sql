-- Where things stand. A place may lie in another and may be closed for a while.

CREATE TABLE place (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  parent_id uuid,
  code text NOT NULL CHECK (length(code) BETWEEN 1 AND 30),
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  kind text NOT NULL CHECK (kind IN ('house', 'bay', 'bench', 'yard', 'cold-frame', 'staging', 'nursery-bed', 'quarantine')),
  -- Stands through winter without its root balls freezing hard: no-winter rules do not bind here.
  winter_cover boolean NOT NULL DEFAULT false,
  closed_until_at timestamptz,
  closed_reason text,
  retired_at timestamptz,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, parent_id) REFERENCES place (nursery_id, id)
);
CREATE UNIQUE INDEX place_code_key ON place (nursery_id, code);
CREATE INDEX place_parent_idx ON place (nursery_id, parent_id);
