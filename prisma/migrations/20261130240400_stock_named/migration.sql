-- What other features read of places: what they are called, what kind they are and what they lie in.
CREATE VIEW place_named WITH (security_invoker = true) AS
SELECT nursery_id, id, parent_id, code, name, kind, winter_cover, retired_at FROM place;
GRANT SELECT ON place_named TO rootclock_app;
