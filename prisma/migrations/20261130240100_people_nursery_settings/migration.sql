-- What features read of the nursery's row: what it is called, the settings that bear on their work, and its version.
CREATE VIEW nursery_settings WITH (security_invoker = true) AS
SELECT id, name, units, currency, zone, region, version, rules_version, freeze_md, freeze_standing, notice_days, season_end_on, plan_confidence, prior_weight, evidence_limit, winter_survival,
       winter_survival_standing, edition
  FROM nursery;
GRANT SELECT ON nursery_settings TO rootclock_app;

-- Which commands were taken, by whom and as which of the nursery's versions. What was sent and answered is not in it.
CREATE VIEW command_taken WITH (security_invoker = true) AS
SELECT nursery_id, id, version, person_id, recorded_at FROM command;
GRANT SELECT ON command_taken TO rootclock_app;
