-- The parameter and the table share the name person: inside the function the parameter is meant.
CREATE OR REPLACE FUNCTION change_nursery_person(person uuid, person_name text, person_role text, ends_at timestamptz, secret_hash text, at timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
#variable_conflict use_variable
BEGIN
  UPDATE membership SET role = person_role, ended_at = ends_at WHERE nursery_id = current_nursery() AND person_id = person;
  IF NOT FOUND THEN RETURN false; END IF;
  UPDATE person p SET name = person_name, password_hash = coalesce(secret_hash, p.password_hash) WHERE p.id = person;
  IF secret_hash IS NOT NULL OR ends_at IS NOT NULL THEN
    UPDATE token t SET revoked_at = at WHERE t.person_id = person AND t.revoked_at IS NULL;
  END IF;
  RETURN true;
END $$;
