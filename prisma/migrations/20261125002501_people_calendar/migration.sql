-- A person's calendar address: a token without a session, of which at most one stands. Making a new one ends the one before, so that a request
-- that is sent twice leaves the address that was answered last.
CREATE FUNCTION open_calendar(token_hash bytea, nursery uuid, person uuid, opened_at timestamptz, ends_at timestamptz) RETURNS void
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  UPDATE token t SET revoked_at = opened_at WHERE t.person_id = person AND t.kind = 'calendar' AND t.revoked_at IS NULL;
  INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at) VALUES (token_hash, 'calendar', nursery, person, opened_at, ends_at);
END $$;

CREATE FUNCTION revoke_calendar(person uuid, at timestamptz) RETURNS void
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE token SET revoked_at = at WHERE person_id = person AND kind = 'calendar' AND revoked_at IS NULL $$;

-- Since when a person has an address that works; no row while there is none.
CREATE FUNCTION calendar_opened_at(person uuid, at timestamptz) RETURNS SETOF timestamptz
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT created_at FROM token WHERE person_id = person AND kind = 'calendar' AND revoked_at IS NULL AND expires_at > at $$;

DO $$
DECLARE f text;
BEGIN
  FOREACH f IN ARRAY ARRAY['open_calendar(bytea, uuid, uuid, timestamptz, timestamptz)', 'revoke_calendar(uuid, timestamptz)', 'calendar_opened_at(uuid, timestamptz)'] LOOP
    EXECUTE format('REVOKE ALL ON FUNCTION %s FROM PUBLIC', f);
    EXECUTE format('GRANT EXECUTE ON FUNCTION %s TO rootclock_app', f);
  END LOOP;
END $$;
