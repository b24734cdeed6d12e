-- Row security: the server's role owns nothing and sees one nursery at a time, even where a query forgets to ask for it.

DO $$ BEGIN
  IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = 'rootclock_app') THEN
    CREATE ROLE rootclock_app NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS;
  END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
END $$;
DO $$ BEGIN
  IF NOT pg_has_role(current_user, 'rootclock_app', 'MEMBER') THEN
    EXECUTE format('GRANT rootclock_app TO %I', current_user);
  END IF;
END $$;
GRANT USAGE ON SCHEMA public TO rootclock_app;

CREATE FUNCTION current_nursery() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.nursery', true), '')::uuid $$;

-- Puts a tenant table under row security; later migrations call it for the tables they add.
CREATE FUNCTION keep_within_nursery(tenant_table regclass, rights text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', tenant_table);
  EXECUTE format($policy$CREATE POLICY within_nursery ON %s
    USING (nursery_id = (SELECT nullif(current_setting('app.nursery', true), '')::uuid))
    WITH CHECK (nursery_id = (SELECT nullif(current_setting('app.nursery', true), '')::uuid))$policy$, tenant_table);
  EXECUTE format('GRANT %s ON %s TO rootclock_app', rights, tenant_table);
END $$;
REVOKE ALL ON FUNCTION keep_within_nursery(regclass, text) FROM PUBLIC;

SELECT keep_within_nursery(t::regclass, 'SELECT, INSERT, UPDATE') FROM unnest(ARRAY['plant', 'container', 'place', 'source', 'code_counter',
  'pot_life_rule', 'planting_window', 'lot', 'batch', 'intake', 'hold', 'client', 'site', 'bed', 'garden_order', 'order_line']) t;
SELECT keep_within_nursery(t::regclass, 'SELECT, INSERT, UPDATE, DELETE') FROM unnest(ARRAY['plant_name', 'plant_fact', 'line_alternative', 'reservation']) t;
SELECT keep_within_nursery(t::regclass, 'SELECT, INSERT') FROM unnest(ARRAY['command', 'entry', 'movement', 'entry_subject', 'batch_count',
  'treatment', 'observation']) t;
SELECT keep_within_nursery('lineage'::regclass, 'SELECT');
-- The balance itself is out of the server's reach: it may open an account, never write its units.
SELECT keep_within_nursery('account'::regclass, 'SELECT');
GRANT INSERT (nursery_id, id, kind, lot_id, batch_id, place_id, line_id, outside) ON account TO rootclock_app;

ALTER TABLE nursery ENABLE ROW LEVEL SECURITY;
CREATE POLICY within_nursery ON nursery
  USING (id = (SELECT nullif(current_setting('app.nursery', true), '')::uuid))
  WITH CHECK (id = (SELECT nullif(current_setting('app.nursery', true), '')::uuid));
GRANT SELECT, UPDATE ON nursery TO rootclock_app;

-- Begins a command: sets whose nursery this transaction is, takes the nursery's one write lock, and looks the command id up.
-- Each statement of a volatile function has its own snapshot, so the look-up after the lock sees what was just committed.
CREATE FUNCTION begin_command(nursery_key uuid, command_key uuid)
  RETURNS TABLE (version int, zone text, rules_version int, rolled_on text, known_name text, known_person uuid, known_hash text, known_answer jsonb)
  LANGUAGE plpgsql AS $$
BEGIN
  PERFORM set_config('app.nursery', nursery_key::text, true);
  UPDATE nursery n SET version = n.version + 1 WHERE n.id = nursery_key
    RETURNING n.version::int, n.zone, n.rules_version::int, n.rolled_on::text INTO version, zone, rules_version, rolled_on;
  IF NOT FOUND THEN RETURN; END IF;
  SELECT c.name, c.person_id, c.input_hash, c.answer INTO known_name, known_person, known_hash, known_answer
    FROM command c WHERE c.nursery_id = nursery_key AND c.id = command_key;
  RETURN NEXT;
END $$;

-- Begins a read: sets whose nursery this transaction is and answers its time zone.
CREATE FUNCTION begin_read(nursery_key uuid) RETURNS text LANGUAGE plpgsql AS $$
BEGIN
  PERFORM set_config('app.nursery', nursery_key::text, true);
  RETURN (SELECT n.zone FROM nursery n WHERE n.id = nursery_key);
END $$;

-- People and tokens stand outside row security; these functions are the only way to them.
CREATE FUNCTION person_by_email(address text)
  RETURNS TABLE (person_id uuid, person_name text, password_hash text, nursery_id uuid, role text)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.name, p.password_hash, m.nursery_id, m.role FROM person p JOIN membership m ON m.person_id = p.id
   WHERE lower(p.email) = lower(address) AND m.ended_at IS NULL $$;

CREATE FUNCTION open_token(token_hash bytea, token_kind text, nursery uuid, person uuid, opened_at timestamptz, ends_at timestamptz)
  RETURNS void LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at) VALUES (token_hash, token_kind, nursery, person, opened_at, ends_at) $$;

CREATE FUNCTION token_holder(token_hash bytea, token_kind text, at timestamptz)
  RETURNS TABLE (person_id uuid, person_name text, email text, nursery_id uuid, role text)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.name, p.email, m.nursery_id, m.role FROM token t
    JOIN membership m ON m.person_id = t.person_id AND m.nursery_id = t.nursery_id AND m.ended_at IS NULL
    JOIN person p ON p.id = t.person_id
   WHERE t.hash = token_hash AND t.kind = token_kind AND t.revoked_at IS NULL AND t.expires_at > at $$;

CREATE FUNCTION revoke_token(token_hash bytea, at timestamptz) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE token SET revoked_at = at WHERE hash = token_hash AND revoked_at IS NULL $$;

CREATE FUNCTION sign_in_failures(subjects text[], since timestamptz) RETURNS TABLE (subject text, failures bigint)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT f.subject, count(*) FROM sign_in_failure f WHERE f.subject = ANY (subjects) AND f.failed_at > since GROUP BY f.subject $$;

CREATE FUNCTION note_sign_in_failure(subjects text[], at timestamptz) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  DELETE FROM sign_in_failure WHERE failed_at < at - interval '1 day';
  INSERT INTO sign_in_failure (subject, failed_at) SELECT s, at FROM unnest(subjects) s $$;

CREATE FUNCTION any_nursery() RETURNS boolean
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$ SELECT EXISTS (SELECT 1 FROM nursery) $$;

CREATE FUNCTION demo_nursery() RETURNS boolean
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$ SELECT EXISTS (SELECT 1 FROM nursery WHERE demo) $$;

-- The first visit to an empty server makes the first owner; the lock keeps two first visits from both succeeding.
CREATE FUNCTION create_first_owner(nursery uuid, nursery_name text, nursery_zone text, season_end date, person uuid, person_name text,
  person_email text, secret_hash text) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(4310001);
  IF EXISTS (SELECT 1 FROM nursery) THEN RETURN false; END IF;
  INSERT INTO nursery (id, name, zone, season_end_on) VALUES (nursery, nursery_name, nursery_zone, season_end);
  INSERT INTO person (id, email, name, password_hash) VALUES (person, person_email, person_name, secret_hash);
  INSERT INTO membership (nursery_id, person_id, role) VALUES (nursery, person, 'owner');
  RETURN true;
END $$;

-- The people of the nursery that the transaction is set to.
CREATE FUNCTION nursery_people() RETURNS TABLE (person_id uuid, name text, email text, role text, ended_at timestamptz)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.name, p.email, m.role, m.ended_at FROM membership m JOIN person p ON p.id = m.person_id WHERE m.nursery_id = current_nursery() $$;

-- False when the address is taken: one person belongs to one nursery.
CREATE FUNCTION add_nursery_person(person uuid, person_name text, person_email text, secret_hash text, person_role text) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  INSERT INTO person (id, email, name, password_hash) VALUES (person, person_email, person_name, secret_hash);
  INSERT INTO membership (nursery_id, person_id, role) VALUES (current_nursery(), person, person_role);
  RETURN true;
EXCEPTION WHEN unique_violation THEN RETURN false;
END $$;

-- False when the person is not of this nursery.
CREATE FUNCTION change_nursery_person(person uuid, person_name text, person_role text, ends_at timestamptz, secret_hash text, at timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE membership SET role = person_role, ended_at = ends_at WHERE nursery_id = current_nursery() AND person_id = person;
  IF NOT FOUND THEN RETURN false; END IF;
  UPDATE person SET name = person_name, password_hash = coalesce(secret_hash, password_hash) WHERE id = person;
  IF secret_hash IS NOT NULL OR ends_at IS NOT NULL THEN
    UPDATE token SET revoked_at = at WHERE person_id = person AND revoked_at IS NULL;
  END IF;
  RETURN true;
END $$;

DO $$
DECLARE f text;
BEGIN
  FOREACH f IN ARRAY ARRAY['person_by_email(text)', 'open_token(bytea, text, uuid, uuid, timestamptz, timestamptz)', 'token_holder(bytea, text, timestamptz)',
    'revoke_token(bytea, timestamptz)', 'sign_in_failures(text[], timestamptz)', 'note_sign_in_failure(text[], timestamptz)', 'any_nursery()', 'demo_nursery()',
    'create_first_owner(uuid, text, text, date, uuid, text, text, text)', 'nursery_people()', 'add_nursery_person(uuid, text, text, text, text)',
    'change_nursery_person(uuid, text, text, timestamptz, text, timestamptz)'] LOOP
    EXECUTE format('REVOKE ALL ON FUNCTION %s FROM PUBLIC', f);
    EXECUTE format('GRANT EXECUTE ON FUNCTION %s TO rootclock_app', f);
  END LOOP;
END $$;
