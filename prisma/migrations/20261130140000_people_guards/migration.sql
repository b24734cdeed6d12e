-- Guesses at passwords are counted before anything is hashed, in the database, so that forty at once and several processes share one count.
-- A subject is an account, an address or a known device; its name holds no address of mail in clear.
CREATE TABLE sign_in_pace (
  subject text PRIMARY KEY,
  failures int NOT NULL CHECK (failures >= 0),
  tried_at timestamptz NOT NULL,
  waits_until timestamptz
);
CREATE INDEX sign_in_pace_tried_idx ON sign_in_pace (tried_at);
DROP FUNCTION sign_in_failures(text[], timestamptz);
DROP FUNCTION note_sign_in_failure(text[], timestamptz);
DROP TABLE sign_in_failure;

-- One word typed on two keyboards is one address. Where that would make two people one, both stay as they were.
DO $$ BEGIN
  IF current_setting('server_encoding') = 'UTF8' THEN
    UPDATE person p SET email = normalize(p.email, NFC) WHERE p.email <> normalize(p.email, NFC)
       AND NOT EXISTS (SELECT 1 FROM person other WHERE other.id <> p.id AND lower(normalize(other.email, NFC)) = lower(normalize(p.email, NFC)));
  END IF;
END $$;

-- What sessions are told apart by when they are listed, and the device that a session was opened on.
ALTER TABLE token DROP CONSTRAINT token_kind_check;
ALTER TABLE token ADD CONSTRAINT token_kind_check CHECK (kind IN ('session', 'calendar', 'api', 'public', 'device'));
ALTER TABLE token ADD COLUMN id uuid NOT NULL DEFAULT gen_random_uuid(), ADD COLUMN device_hash bytea, ADD COLUMN agent text NOT NULL DEFAULT '', ADD COLUMN seen_at timestamptz;
CREATE INDEX token_expires_idx ON token (expires_at);

-- One live calendar address a person. Of several that stand by a race the newest stays.
UPDATE token t SET revoked_at = t.created_at WHERE t.kind = 'calendar' AND t.revoked_at IS NULL
   AND EXISTS (SELECT 1 FROM token n WHERE n.person_id = t.person_id AND n.kind = 'calendar' AND n.revoked_at IS NULL AND (n.created_at, n.hash) > (t.created_at, t.hash));
CREATE UNIQUE INDEX token_calendar_key ON token (person_id) WHERE kind = 'calendar' AND revoked_at IS NULL;

-- The person's row is locked first: of two askings the later one ends what the earlier one made.
CREATE OR REPLACE FUNCTION open_calendar(token_hash bytea, nursery uuid, person uuid, opened_at timestamptz, ends_at timestamptz) RETURNS void
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM FROM person p WHERE p.id = person FOR UPDATE;
  UPDATE token t SET revoked_at = opened_at WHERE t.person_id = person AND t.kind = 'calendar' AND t.revoked_at IS NULL;
  INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at) VALUES (token_hash, 'calendar', nursery, person, opened_at, ends_at);
END $$;

-- The hash under which a device is known to a person. Of the cookie it takes a hash only, and the person, so that one cookie serves all
-- who share a device and none of them can be mistaken for another.
CREATE FUNCTION device_token(device_key bytea, person uuid) RETURNS bytea LANGUAGE sql IMMUTABLE AS $$ SELECT sha256(device_key || uuid_send(person)) $$;

-- Begins a guess at an account: answers who it is and what it is counted by, having counted it as failed, or how long it has to wait.
-- From a device that is known to the person only that device's own count is looked at, so that strangers keep nobody out.
CREATE FUNCTION begin_guess(account text, network text, device_key bytea, at timestamptz)
  RETURNS TABLE (wait_seconds int, subjects text[], person_id uuid, person_name text, password_hash text, nursery_id uuid, role text)
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
#variable_conflict use_column
DECLARE
  each text;
  free int;
  latest timestamptz;
BEGIN
  SELECT p.id, p.name, p.password_hash, m.nursery_id, m.role INTO person_id, person_name, password_hash, nursery_id, role
    FROM person p JOIN membership m ON m.person_id = p.id WHERE lower(p.email) = lower(account) AND m.ended_at IS NULL;
  IF EXISTS (SELECT FROM token t WHERE t.hash = device_token(device_key, person_id) AND t.kind = 'device' AND t.revoked_at IS NULL AND t.expires_at > at) THEN
    subjects := ARRAY['device:' || encode(device_token(device_key, person_id), 'hex')];
  ELSE
    -- Always in this order, so that no two guesses wait for each other.
    subjects := ARRAY['account:' || encode(sha256(convert_to(lower(account), 'UTF8')), 'hex'), 'network:' || network];
  END IF;
  FOREACH each IN ARRAY subjects LOOP
    INSERT INTO sign_in_pace AS p (subject, failures, tried_at) VALUES (each, 0, at)
      ON CONFLICT (subject) DO UPDATE SET failures = CASE WHEN p.tried_at < at - interval '1 day' THEN 0 ELSE p.failures END;
  END LOOP;
  SELECT max(p.waits_until) INTO latest FROM sign_in_pace p WHERE p.subject = ANY (subjects);
  IF latest > at THEN
    wait_seconds := ceil(extract(epoch FROM latest - at))::int;
  ELSE
    FOREACH each IN ARRAY subjects LOOP
      -- An address is shared by many people, so it is given more than an account or a device before it has to wait.
      free := CASE WHEN each LIKE 'network:%' THEN 40 ELSE 5 END;
      UPDATE sign_in_pace p SET failures = p.failures + 1, tried_at = at,
             waits_until = CASE WHEN p.failures + 1 < free THEN NULL ELSE at + least(900, 2 ^ least(p.failures + 1 - free, 10)) * interval '1 second' END
       WHERE p.subject = each;
    END LOOP;
    wait_seconds := 0;
  END IF;
  RETURN NEXT;
END $$;

-- A guess that was none: the right password forgives its account or device, and takes its own guess back from its address.
CREATE FUNCTION forgive_guess(guessed text[], is_right boolean) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE sign_in_pace p SET failures = CASE WHEN is_right AND p.subject NOT LIKE 'network:%' THEN 0 ELSE greatest(p.failures - 1, 0) END, waits_until = NULL
   WHERE p.subject = ANY (guessed) $$;

-- Opens a session on a device and makes the device known; what was open there before ends.
CREATE FUNCTION open_session(token_hash bytea, before_hash bytea, device_key bytea, nursery uuid, person uuid, user_agent text, opened_at timestamptz,
  ends_at timestamptz, device_ends_at timestamptz) RETURNS void
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  device bytea := device_token(device_key, person);
BEGIN
  UPDATE token t SET revoked_at = opened_at
   WHERE t.revoked_at IS NULL AND t.kind = 'session' AND (t.hash = before_hash OR (t.person_id = person AND t.device_hash = device));
  INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at, device_hash, agent, seen_at)
    VALUES (token_hash, 'session', nursery, person, opened_at, ends_at, device, user_agent, opened_at);
  INSERT INTO token AS t (hash, kind, nursery_id, person_id, created_at, expires_at) VALUES (device, 'device', nursery, person, opened_at, device_ends_at)
    ON CONFLICT (hash) DO UPDATE SET expires_at = excluded.expires_at, revoked_at = NULL;
END $$;

-- The sessions of a person that are open, and which of them asks.
CREATE FUNCTION person_sessions(person uuid, asking bytea, at timestamptz)
  RETURNS TABLE (id uuid, agent text, opened_at timestamptz, seen_at timestamptz, here boolean)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT t.id, t.agent, t.created_at, coalesce(t.seen_at, t.created_at), coalesce(t.hash = asking, false) FROM token t
   WHERE t.person_id = person AND t.kind = 'session' AND t.revoked_at IS NULL AND t.expires_at > at $$;

-- Ends one session of a person, or for null all but the one that asks. The devices they were open on are known no more.
CREATE FUNCTION end_sessions(person uuid, session uuid, asking bytea, at timestamptz) RETURNS void
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF session IS NULL THEN
    UPDATE token t SET revoked_at = at WHERE t.person_id = person AND t.kind IN ('session', 'device') AND t.revoked_at IS NULL AND t.hash IS DISTINCT FROM asking
       AND t.hash IS DISTINCT FROM (SELECT s.device_hash FROM token s WHERE s.hash = asking);
  ELSE
    UPDATE token t SET revoked_at = at WHERE t.person_id = person AND t.revoked_at IS NULL
       AND (t.id = session AND t.kind = 'session'
            OR t.kind = 'device' AND t.hash = (SELECT s.device_hash FROM token s WHERE s.id = session AND s.person_id = person AND s.kind = 'session'));
  END IF;
END $$;

-- When a session was last used, to the hour: a write each hour and not at every request.
CREATE FUNCTION note_session_seen(token_hash bytea, at timestamptz) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE token SET seen_at = date_trunc('hour', at) WHERE hash = token_hash AND seen_at < date_trunc('hour', at) $$;

DROP FUNCTION token_holder(bytea, text, timestamptz);
CREATE FUNCTION token_holder(token_hash bytea, token_kind text, at timestamptz)
  RETURNS TABLE (person_id uuid, person_name text, email text, nursery_id uuid, role text, is_seen boolean)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.name, p.email, m.nursery_id, m.role, coalesce(t.seen_at, at) >= date_trunc('hour', at) FROM token t
    JOIN membership m ON m.person_id = t.person_id AND m.nursery_id = t.nursery_id AND m.ended_at IS NULL
    JOIN person p ON p.id = t.person_id
   WHERE t.hash = token_hash AND t.kind = token_kind AND t.revoked_at IS NULL AND t.expires_at > at $$;

-- What opens nothing any more: tokens that ended, and counts of guesses that are forgotten. Others may be ending tokens meanwhile.
CREATE FUNCTION purge_door(at timestamptz) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  DELETE FROM token WHERE hash IN (SELECT t.hash FROM token t WHERE t.expires_at <= at OR t.revoked_at <= at - interval '1 day' FOR UPDATE SKIP LOCKED);
  DELETE FROM sign_in_pace WHERE subject IN (SELECT p.subject FROM sign_in_pace p WHERE p.tried_at < at - interval '1 day' FOR UPDATE SKIP LOCKED) $$;

-- A person's own new password, set only while the one it was checked against is still the present one.
CREATE FUNCTION replace_own_password(person uuid, known_hash text, secret_hash text, at timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE person p SET password_hash = secret_hash WHERE p.id = person AND p.password_hash = known_hash
     AND EXISTS (SELECT FROM membership m WHERE m.person_id = p.id AND m.nursery_id = current_nursery() AND m.ended_at IS NULL);
  IF NOT FOUND THEN RETURN false; END IF;
  UPDATE token t SET revoked_at = at WHERE t.person_id = person AND t.revoked_at IS NULL;
  RETURN true;
END $$;

-- The role in which a person may work in the nursery just now, null for nobody of it.
CREATE FUNCTION standing_role(person uuid) RETURNS text
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT m.role FROM membership m WHERE m.nursery_id = current_nursery() AND m.person_id = person AND m.ended_at IS NULL $$;

-- Begins a command of a person: as before, and in the same call, under the nursery's lock, what the person may be by now.
CREATE FUNCTION begin_command(nursery_key uuid, command_key uuid, person_key uuid)
  RETURNS TABLE (version int, zone text, rules_version int, rolled_on text, known_name text, known_person uuid, known_hash text, known_answer jsonb, standing text)
  LANGUAGE plpgsql AS $$
BEGIN
  SELECT b.* INTO version, zone, rules_version, rolled_on, known_name, known_person, known_hash, known_answer FROM begin_command(nursery_key, command_key) b;
  IF version IS NULL THEN RETURN; END IF;
  standing := standing_role(person_key);
  RETURN NEXT;
END $$;

DO $$
DECLARE f text;
BEGIN
  FOREACH f IN ARRAY ARRAY['begin_guess(text, text, bytea, timestamptz)', 'forgive_guess(text[], boolean)',
    'open_session(bytea, bytea, bytea, uuid, uuid, text, timestamptz, timestamptz, timestamptz)', 'person_sessions(uuid, bytea, timestamptz)',
    'end_sessions(uuid, uuid, bytea, timestamptz)', 'note_session_seen(bytea, timestamptz)', 'token_holder(bytea, text, timestamptz)', 'purge_door(timestamptz)',
    'replace_own_password(uuid, text, text, timestamptz)', 'standing_role(uuid)'] LOOP
    EXECUTE format('REVOKE ALL ON FUNCTION %s FROM PUBLIC', f);
    EXECUTE format('GRANT EXECUTE ON FUNCTION %s TO rootclock_app', f);
  END LOOP;
END $$;
