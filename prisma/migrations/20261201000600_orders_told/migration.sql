-- What a page about an order tells beside what was asked for.
CREATE VIEW order_told WITH (security_invoker = true) AS
SELECT nursery_id, id, code, client_id, site_id, kind, due_on, state, pull_issued_on, note, natives_only, edition FROM garden_order;
GRANT SELECT ON order_told TO rootclock_app;

CREATE VIEW line_told WITH (security_invoker = true) AS
SELECT nursery_id, id, order_id, bed_id, rank, plant_id, container_id, units, seed_zone, wild_type, untreated, withdrawn_on, kit_id, kit_units, edition FROM order_line;
GRANT SELECT ON line_told TO rootclock_app;

CREATE VIEW alternative_told WITH (security_invoker = true) AS
SELECT nursery_id, line_id, plant_id, container_id, penalty FROM line_alternative;
GRANT SELECT ON alternative_told TO rootclock_app;

CREATE VIEW kit_told WITH (security_invoker = true) AS
SELECT nursery_id, id, name, note, retired_on, edition FROM kit;
GRANT SELECT ON kit_told TO rootclock_app;
