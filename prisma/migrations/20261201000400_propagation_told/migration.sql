-- What a stage of a protocol takes.
CREATE VIEW stage_told WITH (security_invoker = true) AS
SELECT nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, duration_source, share, share_standing, share_source, season_from_md, season_to_md, rests, temperature_low_c, temperature_high_c, light, depth_mm, medium, container_id, note FROM protocol_stage;
GRANT SELECT ON stage_told TO rootclock_app;
