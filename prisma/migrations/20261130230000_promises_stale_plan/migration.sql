-- Since when promises wait to be solved: what happened to plants is booked at once, and where much is shared the plan follows after it.
ALTER TABLE nursery ADD COLUMN plan_stale_since timestamptz;

-- The timer of days looks after plans that were left stale, too: a server may have ended in between.
DROP FUNCTION every_nursery();
CREATE FUNCTION every_nursery() RETURNS TABLE (nursery_id uuid, zone text, rolled_on text, version int, plan_is_stale boolean)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT n.id, n.zone, n.rolled_on::text, n.version::int, n.plan_stale_since IS NOT NULL FROM nursery n ORDER BY n.id $$;
REVOKE ALL ON FUNCTION every_nursery() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION every_nursery() TO rootclock_app;
