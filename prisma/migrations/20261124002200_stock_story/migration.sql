-- One end of a movement as people read it. Written once, since the story of a lot, of a batch and of a place all read it; as plain SQL
-- with the rights of who asks, so that the planner can inline it and row security holds.
CREATE FUNCTION account_described(nursery uuid, account_id uuid) RETURNS TABLE (described jsonb) LANGUAGE sql STABLE PARALLEL SAFE AS $$
  SELECT CASE a.kind
      WHEN 'outside' THEN jsonb_build_object('kind', 'outside', 'outside', a.outside)
      WHEN 'staged' THEN jsonb_build_object('kind', 'staged', 'lotId', a.lot_id, 'code', l.code, 'order', o.code)
      ELSE jsonb_build_object('kind', 'place', 'lotId', a.lot_id, 'batchId', a.batch_id, 'code', coalesce(l.code, b.code), 'place', w.code) END
    FROM account a
    LEFT JOIN lot l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
    LEFT JOIN batch b ON b.nursery_id = a.nursery_id AND b.id = a.batch_id
    LEFT JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
    LEFT JOIN order_line i ON i.nursery_id = a.nursery_id AND i.id = a.line_id
    LEFT JOIN garden_order o ON o.nursery_id = i.nursery_id AND o.id = i.order_id
   WHERE a.nursery_id = nursery AND a.id = account_id $$;
GRANT EXECUTE ON FUNCTION account_described(uuid, uuid) TO rootclock_app;
