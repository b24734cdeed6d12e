-- What features read of the nursery's row: the settings that bear on their work, and its version.
CREATE VIEW nursery_settings WITH (security_invoker = true) AS
SELECT id, zone, region, version, rules_version, freeze_md, freeze_standing, notice_days, season_end_on, plan_confidence, prior_weight, evidence_limit, winter_survival,
       winter_survival_standing, edition
  FROM nursery;
GRANT SELECT ON nursery_settings TO rootclock_app;
