-- What other features read of sources: what they are called, where they are from, and what that promises.
CREATE VIEW source_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, plant_id, kind, provenance, seed_zone, origin, gathered_on, gathered_precision, vendor, pesticide_statement, mother_lot_id, retired_at
  FROM source;
GRANT SELECT ON source_named TO rootclock_app;
