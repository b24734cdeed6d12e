-- What is stored must always be a solution. Plants that only become fewer, or were not needed, leave it one as long as all that is reserved is
-- still there and serves; what becomes more, or other than it was, may serve an open line better than what serves it now.
DROP FUNCTION promises_need_plan(uuid, uuid[], uuid[], date);

CREATE FUNCTION promises_need_plan(nursery_key uuid, lot_keys uuid[], batch_keys uuid[], gaining_keys uuid[], today date) RETURNS boolean
  LANGUAGE plpgsql STABLE SET plan_cache_mode = force_generic_plan AS $$
DECLARE
  s record;
BEGIN
  FOR s IN
    SELECT l.id, l.plant_id, l.container_id, coalesce(l.ready_on, l.potted_on) AS ready_on, l.plant_by_on,
           (SELECT coalesce(sum(a.units), 0) FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
             WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0 AND w.kind <> 'quarantine') AS units,
           (SELECT coalesce(sum(r.units), 0) FROM reservation r WHERE r.nursery_id = l.nursery_id AND r.lot_id = l.id) AS reserved,
           EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL) AS held
      FROM lot l WHERE l.nursery_id = nursery_key AND l.id = ANY (lot_keys)
    UNION ALL
    SELECT b.id, b.plant_id, b.target_container_id, b.ready_on, b.plant_by_on, CASE WHEN b.closed_on IS NULL THEN b.cautious_units ELSE 0 END,
           (SELECT coalesce(sum(r.units), 0) FROM reservation r WHERE r.nursery_id = b.nursery_id AND r.batch_id = b.id), false
      FROM batch b WHERE b.nursery_id = nursery_key AND b.id = ANY (batch_keys)
  LOOP
    IF s.reserved > s.units OR (s.reserved > 0 AND (s.held OR s.id = ANY (gaining_keys))) THEN
      RETURN true;
    END IF;
    -- Something reserved here no longer serves: another item now, or floating on a day that does not fit any more.
    IF s.reserved > 0 AND EXISTS (
      SELECT 1 FROM reservation r
        JOIN order_line l ON l.nursery_id = r.nursery_id AND l.id = r.line_id
        JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id
       WHERE r.nursery_id = nursery_key AND (r.lot_id = s.id OR r.batch_id = s.id)
         AND ((NOT r.pinned AND (greatest(o.due_on, today) > s.plant_by_on OR s.ready_on > greatest(o.due_on, today)))
              OR NOT ((l.plant_id = s.plant_id AND l.container_id = s.container_id) OR EXISTS (
                   SELECT 1 FROM line_alternative x WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id AND x.plant_id = s.plant_id AND x.container_id = s.container_id)))) THEN
      RETURN true;
    END IF;
    -- Something is free that an open line could take, be it short or served by something else.
    IF s.id = ANY (gaining_keys) AND s.units > 0 AND NOT s.held AND (
      EXISTS (
        SELECT 1 FROM order_line l JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
         WHERE l.nursery_id = nursery_key AND l.withdrawn_on IS NULL AND l.plant_id = s.plant_id AND l.container_id = s.container_id
           AND (greatest(o.due_on, today) >= s.ready_on OR batch_keys @> ARRAY[s.id]) AND coalesce(greatest(o.due_on, today) <= s.plant_by_on, true))
      OR EXISTS (
        SELECT 1 FROM line_alternative x
          JOIN order_line l ON l.nursery_id = x.nursery_id AND l.id = x.line_id AND l.withdrawn_on IS NULL
          JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
         WHERE x.nursery_id = nursery_key AND x.plant_id = s.plant_id AND x.container_id = s.container_id
           AND (greatest(o.due_on, today) >= s.ready_on OR batch_keys @> ARRAY[s.id]) AND coalesce(greatest(o.due_on, today) <= s.plant_by_on, true))) THEN
      RETURN true;
    END IF;
  END LOOP;
  RETURN false;
END $$;
REVOKE ALL ON FUNCTION promises_need_plan(uuid, uuid[], uuid[], uuid[], date) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION promises_need_plan(uuid, uuid[], uuid[], uuid[], date) TO rootclock_app;
