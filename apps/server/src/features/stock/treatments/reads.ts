import type { ReadContext } from '../../../trpc/operation.ts';

/** A treatment that plants of a lot were under, on it or on what it came from. */
export interface TreatmentRow {
  lotId: string;
  entryId: string;
  product: string;
  registrationNo: string | null;
  rate: string | null;
  applicator: string;
  target: string;
  treatedOn: string;
  treatedAt: string;
  reentryAt: string | null;
  note: string;
  /** The lot or batch it was applied to: the lot itself, or where its plants stood then. */
  on: { kind: 'lot' | 'batch'; id: string; code: string };
}

/**
 * All treatments of a lot, read up its lineage, through packs that its batch was drawn from as well, and newest first. What a parent was given after the plants had left it is not theirs;
 * on the day they left it counts, since nobody can say which came first.
 */
export async function loadTreatmentHistory({ tx, nurseryId }: ReadContext, lotId: string): Promise<TreatmentRow[]> {
  return tx.$queryRaw<TreatmentRow[]>`
    WITH RECURSIVE descent (lot_id, id, until_on) AS (
      SELECT ${lotId}::uuid, ${lotId}::uuid, 'infinity'::date
      UNION
      SELECT d.lot_id, came.parent_id, least(d.until_on, came.on_day)
        FROM descent d
        CROSS JOIN LATERAL (
          SELECT g.parent_id, (
            SELECT max(e.happened_on)
              FROM account t
              JOIN movement m ON m.nursery_id = t.nursery_id AND m.to_account_id = t.id
              JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id AND g.parent_id IN (f.lot_id, f.batch_id)
              JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind <> 'reverse'
             WHERE t.nursery_id = ${nurseryId}::uuid AND t.lot_id = g.child_lot_id
               AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)) AS on_day
            FROM lineage g WHERE g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = d.id
          UNION ALL
          SELECT b.parent_batch_id, b.started_on FROM batch b WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = d.id AND b.parent_batch_id IS NOT NULL
          OFFSET 0) came
       WHERE came.on_day IS NOT NULL)
    SELECT DISTINCT ON (t.treated_at, d.lot_id, t.id) d.lot_id::text AS "lotId", e.id::text AS "entryId", t.product, t.registration_no AS "registrationNo", t.rate, t.applicator, t.target,
           e.happened_on::text AS "treatedOn", to_char(t.treated_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "treatedAt",
           to_char(t.reentry_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "reentryAt", e.note,
           jsonb_build_object('kind', s.subject_kind, 'id', s.subject_id, 'code', coalesce(l.code, b.code)) AS "on"
      FROM descent d
      JOIN entry_subject s ON s.nursery_id = ${nurseryId}::uuid AND s.subject_id = d.id
      JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id AND e.kind = 'treat' AND e.happened_on <= d.until_on
      JOIN treatment t ON t.nursery_id = e.nursery_id AND t.entry_id = e.id
      LEFT JOIN lot l ON l.nursery_id = s.nursery_id AND l.id = s.subject_id
      LEFT JOIN batch b ON b.nursery_id = s.nursery_id AND b.id = s.subject_id
     WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
     ORDER BY t.treated_at DESC, d.lot_id, t.id, d.id = d.lot_id DESC`;
}
