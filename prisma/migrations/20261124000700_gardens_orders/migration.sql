-- Clients, their sites and beds, and what they were promised.

CREATE TABLE client (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  email text,
  phone text,
  address text,
  -- Days before the plant-by day by which a plant must have left for this client.
  lead_days int NOT NULL DEFAULT 0 CHECK (lead_days BETWEEN 0 AND 366),
  note text NOT NULL DEFAULT '',
  blanked_at timestamptz,
  PRIMARY KEY (nursery_id, id)
);

CREATE TABLE site (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  client_id uuid NOT NULL,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  address text NOT NULL DEFAULT '',
  region text,
  livestock_near boolean NOT NULL DEFAULT false,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, client_id) REFERENCES client (nursery_id, id)
);
CREATE INDEX site_client_idx ON site (nursery_id, client_id);

CREATE TABLE bed (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  site_id uuid NOT NULL,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  area_cm2 int CHECK (area_cm2 > 0),
  sun text,
  moisture text,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, site_id) REFERENCES site (nursery_id, id)
);
CREATE INDEX bed_site_idx ON bed (nursery_id, site_id);

CREATE TABLE garden_order (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  code text NOT NULL,
  client_id uuid NOT NULL,
  site_id uuid,
  kind text NOT NULL CHECK (kind IN ('installation', 'pickup', 'contract-growing')),
  due_on date NOT NULL,
  state text NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'done', 'cancelled')),
  pull_issued_on date,
  note text NOT NULL DEFAULT '',
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, client_id) REFERENCES client (nursery_id, id),
  FOREIGN KEY (nursery_id, site_id) REFERENCES site (nursery_id, id),
  CHECK (kind <> 'installation' OR site_id IS NOT NULL)
);
CREATE UNIQUE INDEX garden_order_code_key ON garden_order (nursery_id, code);
CREATE INDEX garden_order_open_idx ON garden_order (nursery_id, due_on) WHERE state = 'open';
CREATE INDEX garden_order_client_idx ON garden_order (nursery_id, client_id);

CREATE TABLE order_line (
  nursery_id uuid NOT NULL,
  id uuid NOT NULL,
  order_id uuid NOT NULL,
  bed_id uuid,
  rank int NOT NULL,
  plant_id uuid NOT NULL,
  container_id uuid NOT NULL,
  units int NOT NULL CHECK (units > 0),
  seed_zone text,
  wild_type boolean NOT NULL DEFAULT false,
  untreated boolean NOT NULL DEFAULT false,
  withdrawn_on date,
  PRIMARY KEY (nursery_id, id),
  FOREIGN KEY (nursery_id, order_id) REFERENCES garden_order (nursery_id, id),
  FOREIGN KEY (nursery_id, bed_id) REFERENCES bed (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id)
);
CREATE UNIQUE INDEX order_line_rank_key ON order_line (nursery_id, rank);
CREATE INDEX order_line_order_idx ON order_line (nursery_id, order_id);
CREATE INDEX order_line_item_idx ON order_line (nursery_id, plant_id, container_id) WHERE withdrawn_on IS NULL;
ALTER TABLE account ADD FOREIGN KEY (nursery_id, line_id) REFERENCES order_line (nursery_id, id);

-- The same line may also be met by these items, the smaller penalty first.
CREATE TABLE line_alternative (
  nursery_id uuid NOT NULL,
  line_id uuid NOT NULL,
  plant_id uuid NOT NULL,
  container_id uuid NOT NULL,
  penalty int NOT NULL CHECK (penalty BETWEEN 1 AND 100),
  PRIMARY KEY (nursery_id, line_id, plant_id, container_id),
  FOREIGN KEY (nursery_id, line_id) REFERENCES order_line (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id)
);
CREATE INDEX line_alternative_item_idx ON line_alternative (nursery_id, plant_id, container_id);
