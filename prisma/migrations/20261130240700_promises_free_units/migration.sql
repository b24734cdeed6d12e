-- What may still be promised of each lot: what stands outside quarantine places, less what is reserved; nothing of a held lot. The one place where free units
-- are derived. Each column is found from the lot's own few accounts, reservations and holds, so that who asks for few columns pays for few.
CREATE VIEW free_units WITH (security_invoker = true) AS
SELECT l.nursery_id, l.id AS lot_id, l.plant_id, l.container_id, l.closed_on, s.supply_units, s.reserved_units, s.is_held,
       CASE WHEN s.is_held THEN 0 ELSE greatest(0, s.supply_units - s.reserved_units) END AS free_units
  FROM lot l
 CROSS JOIN LATERAL (
   SELECT coalesce((SELECT sum(a.units) FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id AND w.kind <> 'quarantine'
                     WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0), 0)::int AS supply_units,
          coalesce((SELECT sum(r.units) FROM reservation r WHERE r.nursery_id = l.nursery_id AND r.lot_id = l.id), 0)::int AS reserved_units,
          EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL) AS is_held) s;
GRANT SELECT ON free_units TO rootclock_app;

-- What is reserved of each lot and batch, and for which line.
CREATE VIEW units_reserved WITH (security_invoker = true) AS
SELECT nursery_id, line_id, supply_id, lot_id, batch_id, units, pinned FROM reservation;
GRANT SELECT ON units_reserved TO rootclock_app;
