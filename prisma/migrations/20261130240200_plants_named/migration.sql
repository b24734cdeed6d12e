-- What other features read of plants and containers: what they are called, and the traits that others reckon with.
CREATE VIEW plant_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, scientific_name, vernacular_name, genus, cultivar_epithet, root_habit, larval_host, dormant_months, last_emergence_md, native_regions, handling,
       retired_at
  FROM plant;
GRANT SELECT ON plant_named TO rootclock_app;

CREATE VIEW container_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, name, kind, volume_ml, cells, retired_at FROM container;
GRANT SELECT ON container_named TO rootclock_app;

-- By which words a plant is found.
CREATE VIEW plant_called WITH (security_invoker = true) AS
SELECT nursery_id, plant_id, kind, name, name_key FROM plant_name;
GRANT SELECT ON plant_called TO rootclock_app;

-- What its page tells of a plant, fact by fact.
CREATE VIEW plant_told WITH (security_invoker = true) AS
SELECT nursery_id, plant_id, field, value, standing, source FROM plant_fact;
GRANT SELECT ON plant_told TO rootclock_app;
