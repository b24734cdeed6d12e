-- Begins a command, as before; and has its statements planned once a connection. Those that name lots or places in a list were planned anew
-- each time, since the planner expects ten names where one is sent; for a command over one lot that took longer than running them. The
-- setting ends with the command's transaction.
CREATE OR REPLACE FUNCTION begin_command(nursery_key uuid, command_key uuid)
  RETURNS TABLE (version int, zone text, rules_version int, rolled_on text, known_name text, known_person uuid, known_hash text, known_answer jsonb)
  LANGUAGE plpgsql AS $$
BEGIN
  PERFORM set_config('app.nursery', nursery_key::text, true), set_config('plan_cache_mode', 'force_generic_plan', true);
  UPDATE nursery n SET version = n.version + 1 WHERE n.id = nursery_key
    RETURNING n.version::int, n.zone, n.rules_version::int, n.rolled_on::text INTO version, zone, rules_version, rolled_on;
  IF NOT FOUND THEN RETURN; END IF;
  SELECT c.name, c.person_id, c.input_hash, c.answer INTO known_name, known_person, known_hash, known_answer
    FROM command c WHERE c.nursery_id = nursery_key AND c.id = command_key;
  RETURN NEXT;
END $$;
