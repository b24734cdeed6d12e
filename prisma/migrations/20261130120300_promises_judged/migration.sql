-- All that judging reads of what can be promised, and of who asks for it. Promises read these two and nothing else of the tables beneath, so that the
-- columns on which a promise rests can be listed. What belongs to a row by its foreign keys is joined by LEFT JOIN, so that who asks for few columns
-- pays for few.
CREATE VIEW judged_supply WITH (security_invoker = true) AS
SELECT l.nursery_id, l.id, 'lot' AS kind, l.code, l.plant_id, p.scientific_name, l.container_id, c.code AS container_code, c.volume_ml AS container_ml, c.cells,
       l.closed_on IS NULL AS is_open, coalesce(a.units, 0)::int AS units, coalesce(a.quarantined, 0)::int AS quarantined_units,
       EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL) AS held,
       l.ready_on, l.root_checked_on IS NOT NULL AS root_checked, l.plant_by_on, l.plant_by_state, l.limit_on,
       CASE WHEN r.basis = 'confined' THEN l.confined_on ELSE l.container_on END AS clock_on,
       s.seed_zone, s.origin, p.cultivar_epithet IS NOT NULL AS is_cultivar, p.native_regions, s.kind AS source_kind, s.pesticide_statement
  FROM lot l
  LEFT JOIN plant p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
  LEFT JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
  LEFT JOIN source s ON s.nursery_id = l.nursery_id AND s.id = l.source_id
  LEFT JOIN pot_life_rule r ON r.nursery_id = l.nursery_id AND r.id = l.rule_id
  LEFT JOIN LATERAL (
    SELECT sum(b.units) FILTER (WHERE w.kind <> 'quarantine') AS units, sum(b.units) FILTER (WHERE w.kind = 'quarantine') AS quarantined
      FROM account b JOIN place w ON w.nursery_id = b.nursery_id AND w.id = b.place_id
     WHERE b.nursery_id = l.nursery_id AND b.lot_id = l.id AND b.units > 0) a ON true
UNION ALL
SELECT b.nursery_id, b.id, 'batch', b.code, b.plant_id, p.scientific_name, b.target_container_id, c.code, c.volume_ml, c.cells,
       b.closed_on IS NULL, CASE WHEN b.closed_on IS NULL THEN b.cautious_units ELSE 0 END, 0, false,
       b.ready_on, false, b.plant_by_on, b.plant_by_state, b.limit_on,
       CASE WHEN r.basis = 'confined' THEN b.confined_on ELSE b.container_on END,
       s.seed_zone, s.origin, p.cultivar_epithet IS NOT NULL, p.native_regions, s.kind, s.pesticide_statement
  FROM batch b
  LEFT JOIN plant p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
  LEFT JOIN container c ON c.nursery_id = b.nursery_id AND c.id = b.target_container_id
  LEFT JOIN source s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
  LEFT JOIN pot_life_rule r ON r.nursery_id = b.nursery_id AND r.id = b.rule_id;
GRANT SELECT ON judged_supply TO rootclock_app;

-- The lines of open orders that were not withdrawn.
CREATE VIEW judged_line WITH (security_invoker = true) AS
SELECT l.nursery_id, l.id, l.order_id, o.code AS order_code, o.kind AS order_kind, k.name AS client_name, t.name AS site_name, t.region, k.lead_days,
       l.rank, o.due_on, l.plant_id, p.scientific_name, l.container_id, c.code AS container_code, c.cells, l.units, g.staged_units, g.delivered_units,
       l.seed_zone, l.wild_type, l.untreated, o.natives_only,
       (SELECT jsonb_agg(jsonb_build_object('item', i.plant_id || '@' || i.container_id, 'penalty', i.penalty) ORDER BY i.penalty, i.plant_id, i.container_id)
          FROM (SELECT l.plant_id, l.container_id, 0 AS penalty
                UNION ALL
                SELECT x.plant_id, x.container_id, x.penalty FROM line_alternative x WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id) i) AS accepts,
       coalesce((SELECT array_agg(f.supply_id::text ORDER BY f.supply_id) FROM line_refusal f
                  WHERE f.nursery_id = l.nursery_id AND f.line_id = l.id AND f.taken_back_on IS NULL), '{}') AS refused_ids
  FROM order_line l
  JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
  JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
  LEFT JOIN plant p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
  LEFT JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
  LEFT JOIN client k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
  LEFT JOIN site t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
 WHERE l.withdrawn_on IS NULL;
GRANT SELECT ON judged_line TO rootclock_app;

-- As before, but of what can be promised it knows what judging knows: what has no day is not ready, and floats for nobody.
CREATE OR REPLACE FUNCTION promises_need_plan(nursery_key uuid, lot_keys uuid[], batch_keys uuid[], gaining_keys uuid[], today date) RETURNS boolean
  LANGUAGE plpgsql STABLE SET plan_cache_mode = force_generic_plan AS $$
DECLARE
  s record;
BEGIN
  FOR s IN
    SELECT v.id, v.plant_id, v.container_id, v.ready_on, v.plant_by_on, v.units, v.held,
           (SELECT coalesce(sum(r.units), 0) FROM reservation r WHERE r.nursery_id = v.nursery_id AND r.lot_id = v.id) AS reserved
      FROM judged_supply v WHERE v.nursery_id = nursery_key AND v.kind = 'lot' AND v.id = ANY (lot_keys)
    UNION ALL
    SELECT v.id, v.plant_id, v.container_id, v.ready_on, v.plant_by_on, v.units, false,
           (SELECT coalesce(sum(r.units), 0) FROM reservation r WHERE r.nursery_id = v.nursery_id AND r.batch_id = v.id)
      FROM judged_supply v WHERE v.nursery_id = nursery_key AND v.kind = 'batch' AND v.id = ANY (batch_keys)
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
         AND ((NOT r.pinned AND (s.ready_on IS NULL OR s.ready_on > greatest(o.due_on, today) OR s.plant_by_on < greatest(o.due_on, today)))
              OR NOT ((l.plant_id = s.plant_id AND l.container_id = s.container_id) OR EXISTS (
                   SELECT 1 FROM line_alternative x WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id AND x.plant_id = s.plant_id AND x.container_id = s.container_id)))) THEN
      RETURN true;
    END IF;
    -- Something is free that an open line could take, be it short or served by something else.
    IF s.id = ANY (gaining_keys) AND s.units > 0 AND NOT s.held AND s.ready_on IS NOT NULL AND (
      EXISTS (
        SELECT 1 FROM order_line l JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
         WHERE l.nursery_id = nursery_key AND l.withdrawn_on IS NULL AND l.plant_id = s.plant_id AND l.container_id = s.container_id
           AND greatest(o.due_on, today) >= s.ready_on AND coalesce(greatest(o.due_on, today) <= s.plant_by_on, true))
      OR EXISTS (
        SELECT 1 FROM line_alternative x
          JOIN order_line l ON l.nursery_id = x.nursery_id AND l.id = x.line_id AND l.withdrawn_on IS NULL
          JOIN garden_order o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
         WHERE x.nursery_id = nursery_key AND x.plant_id = s.plant_id AND x.container_id = s.container_id
           AND greatest(o.due_on, today) >= s.ready_on AND coalesce(greatest(o.due_on, today) <= s.plant_by_on, true))) THEN
      RETURN true;
    END IF;
  END LOOP;
  RETURN false;
END $$;
