-- The ledger, as whoever tells a story out of it reads it: entries, what they are about, what they moved between which accounts, and what came of what.
CREATE VIEW entry_told WITH (security_invoker = true) AS
SELECT nursery_id, id, version, kind, happened_on, recorded_at, person_id, reverses_id, cause, note, details FROM entry;
GRANT SELECT ON entry_told TO rootclock_app;

CREATE VIEW entry_about WITH (security_invoker = true) AS
SELECT nursery_id, entry_id, subject_id, subject_kind FROM entry_subject;
GRANT SELECT ON entry_about TO rootclock_app;

CREATE VIEW movement_told WITH (security_invoker = true) AS
SELECT nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units FROM movement;
GRANT SELECT ON movement_told TO rootclock_app;

CREATE VIEW account_told WITH (security_invoker = true) AS
SELECT nursery_id, id, kind, lot_id, batch_id, place_id, line_id, outside, units FROM account;
GRANT SELECT ON account_told TO rootclock_app;

CREATE VIEW lineage_told WITH (security_invoker = true) AS
SELECT nursery_id, child_lot_id, parent_id, parent_kind FROM lineage;
GRANT SELECT ON lineage_told TO rootclock_app;

CREATE VIEW observation_told WITH (security_invoker = true) AS
SELECT nursery_id, id, entry_id, kind, result, amount FROM observation;
GRANT SELECT ON observation_told TO rootclock_app;

CREATE VIEW lot_told WITH (security_invoker = true) AS
SELECT nursery_id, id, code, plant_id, source_id, container_id, created_entry_id, potted_on, potted_precision, confined_on, confined_standing, container_on, container_standing, ready_on, root_checked_on, count_kind, plant_by_on, plant_by_state, limit_on, rule_id, window_id, next_opens_on, closed_on, note FROM lot;
GRANT SELECT ON lot_told TO rootclock_app;

CREATE VIEW batch_told WITH (security_invoker = true) AS
SELECT nursery_id, id, code, plant_id, source_id, created_entry_id, method, unit, container_id, started_on, seeds_sown, confined_on, container_on, emerged_units, emerged_on, target_container_id, cautious_units, ready_on, plant_by_on, plant_by_state, limit_on, rule_id, window_id, next_opens_on, second_winter_on, closed_on, note, protocol_version_id, usual_units, parent_batch_id, seeds_grams, stage_position, stage_kind, stage_begun_on, stage_due_on, stage_late_on FROM batch;
GRANT SELECT ON batch_told TO rootclock_app;

CREATE VIEW place_told WITH (security_invoker = true) AS
SELECT nursery_id, id, parent_id, code, name, kind, winter_cover, closed_until_at, closed_reason, retired_at, bench_area_m2, cover_md, bait_md, uncover_md, edition FROM place;
GRANT SELECT ON place_told TO rootclock_app;
