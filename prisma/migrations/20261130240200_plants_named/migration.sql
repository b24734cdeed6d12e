-- What other features read of plants and containers: what they are called, and the traits that others reckon with.
CREATE VIEW plant_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, scientific_name, vernacular_name, genus, cultivar_epithet, root_habit, larval_host, dormant_months, last_emergence_md, native_regions, handling,
       retired_at
  FROM plant;
GRANT SELECT ON plant_named TO rootclock_app;

CREATE VIEW container_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, name, kind, volume_ml, cells, retired_at FROM container;
GRANT SELECT ON container_named TO rootclock_app;
