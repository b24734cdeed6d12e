-- What other features read of orders and their lines: what is asked for, by whom and for when.
CREATE VIEW order_named WITH (security_invoker = true) AS
SELECT nursery_id, id, code, client_id, site_id, kind, due_on, state, pull_issued_on, natives_only FROM garden_order;
GRANT SELECT ON order_named TO rootclock_app;

CREATE VIEW line_asked WITH (security_invoker = true) AS
SELECT nursery_id, id, order_id, bed_id, rank, plant_id, container_id, units, seed_zone, wild_type, untreated, withdrawn_on FROM order_line;
GRANT SELECT ON line_asked TO rootclock_app;
