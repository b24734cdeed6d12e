-- A kit is a sale unit of several items. An order takes its components as lines of their own, each of which remembers the kit that it came with.

CREATE TABLE kit (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  note text NOT NULL DEFAULT '',
  retired_on date,
  PRIMARY KEY (nursery_id, id)
);
CREATE UNIQUE INDEX kit_name_key ON kit (nursery_id, lower(name)) WHERE retired_on IS NULL;

-- What one kit takes. It is replaced as a whole when a kit is changed; lines keep what they were made with.
CREATE TABLE kit_component (
  nursery_id uuid NOT NULL,
  kit_id uuid NOT NULL,
  plant_id uuid NOT NULL,
  container_id uuid NOT NULL,
  units int NOT NULL CHECK (units > 0),
  PRIMARY KEY (nursery_id, kit_id, plant_id, container_id),
  FOREIGN KEY (nursery_id, kit_id) REFERENCES kit (nursery_id, id),
  FOREIGN KEY (nursery_id, plant_id) REFERENCES plant (nursery_id, id),
  FOREIGN KEY (nursery_id, container_id) REFERENCES container (nursery_id, id)
);

ALTER TABLE order_line
  ADD COLUMN kit_id uuid,
  ADD COLUMN kit_units int CHECK (kit_units > 0),
  ADD CHECK (num_nonnulls(kit_id, kit_units) <> 1),
  ADD FOREIGN KEY (nursery_id, kit_id) REFERENCES kit (nursery_id, id);

SELECT keep_within_nursery('kit'::regclass, 'SELECT, INSERT, UPDATE');
SELECT keep_within_nursery('kit_component'::regclass, 'SELECT, INSERT, DELETE');
CREATE TRIGGER kit_is_kept BEFORE DELETE OR TRUNCATE ON kit FOR EACH STATEMENT EXECUTE FUNCTION refuse_delete();
