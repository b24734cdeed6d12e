-- Every nursery by itself, for what the server does without anybody asking: rolling days, and telling browsers how far each nursery is.
-- It tells no more than that, so row security stays whole.
CREATE FUNCTION every_nursery() RETURNS TABLE (nursery_id uuid, zone text, rolled_on text, version int)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT n.id, n.zone, n.rolled_on::text, n.version::int FROM nursery n ORDER BY n.id $$;
REVOKE ALL ON FUNCTION every_nursery() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION every_nursery() TO rootclock_app;

-- A session that is over ends the streams opened with it at once, in every process: each looks at that person's sessions again.
CREATE FUNCTION tell_of_session() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_notify('rootclock', json_build_object('nursery', OLD.nursery_id, 'person', OLD.person_id)::text);
  RETURN NULL;
END $$;
CREATE TRIGGER token_tells_of_change AFTER UPDATE ON token FOR EACH ROW
  WHEN (OLD.kind = 'session' AND (NEW.revoked_at IS DISTINCT FROM OLD.revoked_at OR NEW.expires_at < OLD.expires_at))
  EXECUTE FUNCTION tell_of_session();
CREATE TRIGGER token_tells_of_end AFTER DELETE ON token FOR EACH ROW
  WHEN (OLD.kind = 'session' AND OLD.revoked_at IS NULL) EXECUTE FUNCTION tell_of_session();
