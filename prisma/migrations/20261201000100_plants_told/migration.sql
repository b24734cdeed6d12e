-- A container as large as it is, beside what it is called.
CREATE VIEW container_told WITH (security_invoker = true) AS
SELECT nursery_id, id, code, name, kind, volume_ml, depth_mm, width_mm, length_mm, cells, trade_class, standing, source, note, retired_at, edition FROM container;
GRANT SELECT ON container_told TO rootclock_app;
