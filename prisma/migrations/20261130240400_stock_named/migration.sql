-- What other features read of places: what they are called, what kind they are and what they lie in.
CREATE VIEW place_named WITH (security_invoker = true) AS
SELECT nursery_id, id, parent_id, code, name, kind, winter_cover, retired_at FROM place;
GRANT SELECT ON place_named TO rootclock_app;

-- What other features read of lots and batches: what they are called, what they are of, and by when they are ready and must leave.
CREATE VIEW lot_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, plant_id, source_id, container_id, potted_on, potted_precision, ready_on, root_checked_on, plant_by_on, plant_by_state, limit_on, closed_on FROM lot;
GRANT SELECT ON lot_named TO rootclock_app;

CREATE VIEW batch_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, plant_id, source_id, method, unit, container_id, started_on, target_container_id, cautious_units, usual_units, ready_on, plant_by_on, plant_by_state,
       limit_on, parent_batch_id, protocol_version_id, closed_on
  FROM batch;
GRANT SELECT ON batch_named TO rootclock_app;

-- What stands where, of which lot or batch, and for which line if it was pulled.
CREATE VIEW units_standing WITH (security_invoker = true) AS
SELECT nursery_id, kind, lot_id, batch_id, place_id, line_id, units FROM account;
GRANT SELECT ON units_standing TO rootclock_app;

-- What holds lots today.
CREATE VIEW lot_held WITH (security_invoker = true) AS
SELECT nursery_id, lot_id, reason, held_on FROM hold WHERE released_on IS NULL;
GRANT SELECT ON lot_held TO rootclock_app;
