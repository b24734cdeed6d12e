-- A second step at sign-in: a code of an app beside the password (RFC 6238), or one of ten recovery codes, each of which works once.
-- Secrets stand outside row security like passwords, and outside the log of commands, which keeps what each command answered.
CREATE TABLE second_step (
  person_id uuid PRIMARY KEY REFERENCES person (id),
  secret text NOT NULL,
  -- Null until a first code has shown that the app has the secret: until then nobody is asked for codes.
  confirmed_at timestamptz,
  -- The last half minute of which a code was taken: no code works twice.
  last_step bigint NOT NULL DEFAULT 0
);
CREATE TABLE recovery_code (
  person_id uuid NOT NULL REFERENCES second_step (person_id) ON DELETE CASCADE,
  hash bytea NOT NULL CHECK (length(hash) = 32),
  used_at timestamptz,
  PRIMARY KEY (person_id, hash)
);

CREATE FUNCTION second_step_of(person uuid) RETURNS TABLE (secret text, confirmed_at timestamptz, last_step bigint, codes_left int)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT s.secret, s.confirmed_at, s.last_step, (SELECT count(*)::int FROM recovery_code c WHERE c.person_id = s.person_id AND c.used_at IS NULL)
    FROM second_step s WHERE s.person_id = person $$;

-- False where a second step is on already: it has to be turned off first, which takes a code.
CREATE FUNCTION begin_second_step(person uuid, new_secret text) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  INSERT INTO second_step AS s (person_id, secret) VALUES (person, new_secret)
    ON CONFLICT (person_id) DO UPDATE SET secret = excluded.secret, last_step = 0 WHERE s.confirmed_at IS NULL;
  RETURN FOUND;
END $$;

-- False where none was begun, or another code confirmed it meanwhile.
CREATE FUNCTION confirm_second_step(person uuid, begun_secret text, step bigint, code_hashes bytea[], at timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE second_step s SET confirmed_at = at, last_step = step WHERE s.person_id = person AND s.secret = begun_secret AND s.confirmed_at IS NULL;
  IF NOT FOUND THEN RETURN false; END IF;
  INSERT INTO recovery_code (person_id, hash) SELECT person, h FROM unnest(code_hashes) h;
  RETURN true;
END $$;

-- True for one of any number of askings with the same code.
CREATE FUNCTION use_second_step(person uuid, step bigint) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE second_step s SET last_step = step WHERE s.person_id = person AND s.confirmed_at IS NOT NULL AND s.last_step < step;
  RETURN FOUND;
END $$;

CREATE FUNCTION use_recovery_code(person uuid, code_hash bytea, at timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE recovery_code c SET used_at = at WHERE c.person_id = person AND c.hash = code_hash AND c.used_at IS NULL;
  RETURN FOUND;
END $$;

CREATE FUNCTION end_second_step(person uuid) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$ DELETE FROM second_step WHERE person_id = person $$;

-- Who of the nursery that the transaction is set to is asked for codes.
CREATE FUNCTION nursery_second_steps() RETURNS TABLE (person_id uuid)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT s.person_id FROM second_step s JOIN membership m ON m.person_id = s.person_id WHERE m.nursery_id = current_nursery() AND s.confirmed_at IS NOT NULL $$;

-- False when the person is not of this nursery.
CREATE FUNCTION remove_second_step(person uuid) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM membership m WHERE m.person_id = person AND m.nursery_id = current_nursery()) THEN RETURN false; END IF;
  DELETE FROM second_step WHERE person_id = person;
  RETURN true;
END $$;

DO $$
DECLARE f text;
BEGIN
  FOREACH f IN ARRAY ARRAY['second_step_of(uuid)', 'begin_second_step(uuid, text)', 'confirm_second_step(uuid, text, bigint, bytea[], timestamptz)',
    'use_second_step(uuid, bigint)', 'use_recovery_code(uuid, bytea, timestamptz)', 'end_second_step(uuid)', 'nursery_second_steps()', 'remove_second_step(uuid)'] LOOP
    EXECUTE format('REVOKE ALL ON FUNCTION %s FROM PUBLIC', f);
    EXECUTE format('GRANT EXECUTE ON FUNCTION %s TO rootclock_app', f);
  END LOOP;
END $$;
