import type { Proofs } from './ledger-proofs.ts';

export const promiseProofs: Proofs = {
  'lot-reserved-within-on-hand': `
    SELECT r.nursery_id AS nursery, format('lot %s: %s promised, %s on hand', r.lot_id, r.units, coalesce(a.units, 0)) AS what
      FROM (SELECT nursery_id, lot_id, sum(units) AS units FROM reservation WHERE lot_id IS NOT NULL GROUP BY nursery_id, lot_id) r
      LEFT JOIN (SELECT nursery_id, lot_id, sum(units) AS units FROM account WHERE kind = 'place' AND units > 0 GROUP BY nursery_id, lot_id) a
        ON a.nursery_id = r.nursery_id AND a.lot_id = r.lot_id
     WHERE r.units > coalesce(a.units, 0)`,
  'batch-reserved-within-yield': `
    SELECT r.nursery_id AS nursery, format('batch %s: %s promised, cautious yield %s', b.code, r.units, b.cautious_units) AS what
      FROM (SELECT nursery_id, batch_id, sum(units) AS units FROM reservation WHERE batch_id IS NOT NULL GROUP BY nursery_id, batch_id) r
      JOIN batch b ON b.nursery_id = r.nursery_id AND b.id = r.batch_id
     WHERE r.units > CASE WHEN b.closed_on IS NULL THEN b.cautious_units ELSE 0 END`,
  'held-lots-promise-nothing': `
    SELECT DISTINCT r.nursery_id AS nursery, format('lot %s is held (%s) and promised', r.lot_id, h.reason) AS what
      FROM reservation r JOIN hold h ON h.nursery_id = r.nursery_id AND h.lot_id = r.lot_id AND h.released_on IS NULL`,
  'lot-closed-when-empty': `
    SELECT l.nursery_id AS nursery, format('lot %s: closed on %s, %s units left', l.code, l.closed_on, coalesce(a.units, 0)) AS what
      FROM lot l LEFT JOIN (SELECT nursery_id, lot_id, sum(units) AS units FROM account WHERE units > 0 AND lot_id IS NOT NULL GROUP BY nursery_id, lot_id) a
        ON a.nursery_id = l.nursery_id AND a.lot_id = l.id
     WHERE (l.closed_on IS NULL) <> (coalesce(a.units, 0) > 0)`,
  'day-not-in-future': `
    SELECT e.nursery_id AS nursery, format('entry %s (%s) happened on %s and was written down on %s', e.id, e.kind, e.happened_on, (e.recorded_at AT TIME ZONE n.zone)::date) AS what
      FROM entry e JOIN nursery n ON n.id = e.nursery_id WHERE e.happened_on > (e.recorded_at AT TIME ZONE n.zone)::date
    UNION ALL
    SELECT m.nursery_id, format('seed movement %s (%s) happened on %s and was written down on %s', m.id, m.kind, m.happened_on, (m.recorded_at AT TIME ZONE n.zone)::date)
      FROM seed_movement m JOIN nursery n ON n.id = m.nursery_id WHERE m.happened_on > (m.recorded_at AT TIME ZONE n.zone)::date`,
};
