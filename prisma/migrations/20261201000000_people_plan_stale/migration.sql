-- Since when a plan waits to be solved is promises' own mark in the nursery's row, read as the settings of others are.
CREATE OR REPLACE VIEW nursery_settings WITH (security_invoker = true) AS
SELECT id, name, units, currency, zone, region, version, rules_version, freeze_md, freeze_standing, notice_days, season_end_on, plan_confidence, prior_weight, evidence_limit, winter_survival,
       winter_survival_standing, edition, plan_stale_since
  FROM nursery;
