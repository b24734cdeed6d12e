-- Rows that people edit carry an edition: 1 as they were made, and from then on the nursery's version at which they were last edited, so that the log of
-- commands tells by whom and when. An edit names the edition it was read at, and one that has moved on is not written over unseen.
DO $$
DECLARE edited text;
BEGIN
  FOREACH edited IN ARRAY ARRAY['nursery', 'membership', 'plant', 'plant_fact', 'container', 'place', 'source', 'pot_life_rule', 'planting_window', 'client', 'site', 'bed',
    'garden_order', 'order_line', 'kit', 'substitution_rule', 'expected_demand'] LOOP
    EXECUTE format('ALTER TABLE %I ADD COLUMN edition integer NOT NULL DEFAULT 1 CHECK (edition >= 1)', edited);
  END LOOP;
END $$;

-- Memberships stand outside row security, as do the functions that change them.
CREATE FUNCTION person_editions() RETURNS TABLE (person_id uuid, edition integer)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT m.person_id, m.edition FROM membership m WHERE m.nursery_id = current_nursery() $$;

-- Answers the new edition, or nothing where the one named has moved on.
CREATE FUNCTION raise_person_edition(person uuid, from_edition integer, at_version integer) RETURNS integer
  LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp AS $$
  UPDATE membership m SET edition = greatest(m.edition + 1, at_version)
   WHERE m.nursery_id = current_nursery() AND m.person_id = person AND m.edition = from_edition RETURNING m.edition $$;

REVOKE ALL ON FUNCTION person_editions() FROM PUBLIC;
REVOKE ALL ON FUNCTION raise_person_edition(uuid, integer, integer) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION person_editions() TO rootclock_app;
GRANT EXECUTE ON FUNCTION raise_person_edition(uuid, integer, integer) TO rootclock_app;
