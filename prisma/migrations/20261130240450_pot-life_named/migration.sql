-- What other features read of rules and windows: what they say of a clock, so that a page can tell why a plant must leave.
CREATE VIEW rule_named WITH (security_invoker = true) AS
SELECT nursery_id, id, basis, span, lot_id, plant_id, container_id, genus, root_habit, carry_max_days, carry_grace_days, standing, source, note, retired_at FROM pot_life_rule;
GRANT SELECT ON rule_named TO rootclock_app;

CREATE VIEW window_named WITH (security_invoker = true) AS
SELECT nursery_id, id, opens_md, closes_md, max_container_ml, region, retired_at FROM planting_window;
GRANT SELECT ON window_named TO rootclock_app;
