-- When seed was tested, and what became of it.
CREATE VIEW viability_told WITH (security_invoker = true) AS
SELECT nursery_id, id, source_id, tested_on, method, seeds_per_replicate, replicates, hard_share, dormant_share, mean_share, to_repeat, withdrawn_at, note FROM viability_test;
GRANT SELECT ON viability_told TO rootclock_app;
