import type { DataLaw } from '@rootclock/domain';

/** A query that returns a row for each breach: the nursery and what breaks. */
export type Proofs = Partial<Record<DataLaw, string>>;

const SIDES = `movement m
  JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
  JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
  JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id`;

export const ledgerProofs: Proofs = {
  'ledger-append-only': `
    SELECT NULL::uuid AS nursery, format('the trigger that keeps %s append-only is missing or off', name) AS what
      FROM unnest(ARRAY['movement', 'entry', 'command', 'seed_movement']) name
     WHERE NOT EXISTS (SELECT 1 FROM pg_trigger WHERE tgrelid = name::regclass AND tgname = name || '_append_only' AND tgenabled IN ('O', 'A'))`,
  'reversal-mirrors': `
    SELECT r.nursery_id AS nursery, format('entry %s does not mirror %s', r.id, r.reverses_id) AS what
      FROM entry r JOIN entry o ON o.nursery_id = r.nursery_id AND o.id = r.reverses_id
     WHERE r.kind = 'reverse' AND (o.kind = 'reverse' OR EXISTS (
       (SELECT to_account_id, from_account_id, to_units, from_units FROM movement x WHERE x.nursery_id = o.nursery_id AND x.entry_id = o.id
        EXCEPT ALL SELECT from_account_id, to_account_id, from_units, to_units FROM movement x WHERE x.nursery_id = r.nursery_id AND x.entry_id = r.id)
       UNION ALL
       (SELECT from_account_id, to_account_id, from_units, to_units FROM movement x WHERE x.nursery_id = r.nursery_id AND x.entry_id = r.id
        EXCEPT ALL SELECT to_account_id, from_account_id, to_units, from_units FROM movement x WHERE x.nursery_id = o.nursery_id AND x.entry_id = o.id)))`,
  'balance-is-sum': `
    WITH sums AS (
      SELECT nursery_id, account_id, sum(units)::bigint AS units FROM (
        SELECT nursery_id, from_account_id AS account_id, -from_units AS units FROM movement
        UNION ALL SELECT nursery_id, to_account_id, to_units FROM movement) s GROUP BY nursery_id, account_id)
    SELECT a.nursery_id AS nursery, format('account %s of lot %s batch %s holds %s, its movements make %s', a.id, a.lot_id, a.batch_id, a.units, coalesce(s.units, 0)) AS what
      FROM account a LEFT JOIN sums s ON s.nursery_id = a.nursery_id AND s.account_id = a.id
     WHERE a.kind <> 'outside' AND a.units <> coalesce(s.units, 0)`,
  'balance-not-negative': `
    SELECT nursery_id AS nursery, format('account %s holds %s', id, units) AS what FROM account WHERE units < 0 OR (kind = 'outside' AND units <> 0)`,
  'units-enter-and-leave': `
    SELECT m.nursery_id AS nursery, format('entry %s (%s) moves from %s to %s', e.id, e.kind, coalesce(f.outside, f.kind), coalesce(t.outside, t.kind)) AS what
      FROM ${SIDES}
     WHERE (f.kind = 'outside' OR t.kind = 'outside') AND CASE WHEN e.kind = 'reverse'
       THEN (t.kind = 'outside' AND f.kind = 'outside')
       ELSE (f.kind = 'outside' AND t.kind = 'outside')
         OR (f.kind = 'outside' AND f.outside NOT IN ('opening', 'bought', 'started', 'found'))
         OR (t.kind = 'outside' AND t.outside NOT IN ('planted', 'sold', 'given', 'lost', 'unexplained')) END`,
  'sides-equal': `
    SELECT m.nursery_id AS nursery, format('entry %s (%s) moves %s out and %s in', e.id, e.kind, m.from_units, m.to_units) AS what
      FROM movement m JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
      LEFT JOIN entry o ON o.nursery_id = e.nursery_id AND o.id = e.reverses_id
     WHERE m.from_units <> m.to_units AND coalesce(o.kind, e.kind) NOT IN ('pot', 'convert')`,
  'lot-receives-lawfully': `
    SELECT m.nursery_id AS nursery, format('entry %s (%s) brings units of %s into lot %s', e.id, e.kind, coalesce(f.lot_id, f.batch_id), t.lot_id) AS what
      FROM ${SIDES} JOIN lot l ON l.nursery_id = t.nursery_id AND l.id = t.lot_id
     WHERE f.kind <> 'outside' AND f.lot_id IS DISTINCT FROM t.lot_id AND e.kind <> 'reverse'
       AND NOT (e.kind IN ('pot', 'pot-up', 'convert', 'split', 'merge') AND l.created_entry_id = m.entry_id) AND NOT (e.kind = 'pot' AND f.batch_id IS NOT NULL)`,
  'lineage-follows-movements': `
    WITH moved AS (
      SELECT DISTINCT m.nursery_id, t.lot_id AS child_lot_id, coalesce(f.lot_id, f.batch_id) AS parent_id FROM ${SIDES}
       WHERE e.kind <> 'reverse' AND t.lot_id IS NOT NULL AND f.kind <> 'outside' AND f.lot_id IS DISTINCT FROM t.lot_id)
    SELECT coalesce(x.nursery_id, g.nursery_id) AS nursery, format('lot %s and %s: lineage and movements differ', coalesce(x.child_lot_id, g.child_lot_id), coalesce(x.parent_id, g.parent_id)) AS what
      FROM moved x FULL JOIN lineage g ON g.nursery_id = x.nursery_id AND g.child_lot_id = x.child_lot_id AND g.parent_id = x.parent_id
     WHERE x.parent_id IS NULL OR g.parent_id IS NULL`,
  // A walk from each lot upwards stops at what it has met before, so a cycle ends the walk instead of the check.
  'lineage-acyclic': `
    WITH RECURSIVE up AS (
      SELECT nursery_id, child_lot_id AS start, parent_id FROM lineage WHERE parent_kind = 'lot'
      UNION SELECT u.nursery_id, u.start, g.parent_id FROM up u JOIN lineage g ON g.nursery_id = u.nursery_id AND g.child_lot_id = u.parent_id AND g.parent_kind = 'lot')
    SELECT nursery_id AS nursery, format('lot %s descends from itself', start) AS what FROM up WHERE start = parent_id`,
};
