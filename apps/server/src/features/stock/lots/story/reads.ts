import type { ReadContext } from '../../../../trpc/operation.ts';
import { entryRow, lotRow, type EntryRow, type LotRow } from './rows.ts';

/** Everything a lot's page shows beside its entries, in one statement; each part is reached by an index on the lot. */
export async function loadLotRow({ tx, nurseryId }: ReadContext, lotId: string): Promise<LotRow | undefined> {
  const row = await tx.row(lotRow)`
    SELECT l.id::text, l.code, l.potted_on::text AS "pottedOn", l.potted_precision AS "pottedPrecision", l.confined_on::text AS "confinedOn",
      l.confined_standing AS "confinedStanding", l.container_on::text AS "containerOn", l.container_standing AS "containerStanding", l.ready_on::text AS "readyOn",
      l.root_checked_on::text AS "rootCheckedOn", l.count_kind AS "countKind", l.plant_by_on::text AS "plantByOn", l.plant_by_state AS "plantByState",
      l.limit_on::text AS "limitOn", l.next_opens_on::text AS "nextOpensOn", l.closed_on::text AS "closedOn", l.note, n.notice_days AS "noticeDays",
      jsonb_build_object('id', p.id, 'code', p.code, 'scientificName', p.scientific_name, 'vernacularName', p.vernacular_name, 'rootHabit', p.root_habit,
        'larvalHost', p.larval_host, 'handling', p.handling, 'dormantMonths', p.dormant_months, 'lastEmergenceMd', p.last_emergence_md) AS plant,
      jsonb_build_object('id', s.id, 'code', s.code, 'kind', s.kind, 'provenance', s.provenance, 'seedZone', s.seed_zone, 'origin', s.origin, 'gatheredOn', s.gathered_on,
        'gatheredPrecision', s.gathered_precision, 'vendor', s.vendor, 'pesticideStatement', s.pesticide_statement) AS source,
      jsonb_build_object('id', c.id, 'code', c.code, 'name', c.name, 'kind', c.kind, 'volumeMl', c.volume_ml, 'cells', c.cells) AS container,
      (SELECT jsonb_build_object('id', r.id, 'basis', r.basis, 'span', r.span, 'lotId', r.lot_id, 'plant', rp.scientific_name, 'genus', r.genus, 'rootHabit', r.root_habit,
          'container', rc.name, 'standing', r.standing, 'source', r.source, 'note', r.note)
         FROM rule_named r LEFT JOIN plant_named rp ON rp.nursery_id = r.nursery_id AND rp.id = r.plant_id LEFT JOIN container_named rc ON rc.nursery_id = r.nursery_id AND rc.id = r.container_id
        WHERE r.nursery_id = l.nursery_id AND r.id = l.rule_id) AS rule,
      coalesce((SELECT jsonb_agg(jsonb_build_object('placeId', w.id, 'code', w.code, 'name', w.name, 'kind', w.kind, 'units', a.units, 'closedUntilAt', w.closed_until_at, 'closedReason', w.closed_reason) ORDER BY w.code)
         FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
        WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0), '[]') AS standing,
      coalesce((SELECT jsonb_agg(jsonb_build_object('lineId', a.line_id, 'orderId', o.id, 'orderCode', o.code, 'client', k.name, 'units', a.units) ORDER BY o.due_on, o.code)
         FROM account a JOIN line_asked i ON i.nursery_id = a.nursery_id AND i.id = a.line_id JOIN order_named o ON o.nursery_id = i.nursery_id AND o.id = i.order_id
         JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
        WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'staged' AND a.units > 0), '[]') AS staged,
      coalesce((SELECT jsonb_agg(jsonb_build_object('lineId', v.line_id, 'orderId', o.id, 'orderCode', o.code, 'client', k.name, 'units', v.units, 'dueOn', o.due_on, 'pinned', v.pinned) ORDER BY o.due_on, o.code)
         FROM units_reserved v JOIN line_asked i ON i.nursery_id = v.nursery_id AND i.id = v.line_id JOIN order_named o ON o.nursery_id = i.nursery_id AND o.id = i.order_id
         JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
        WHERE v.nursery_id = l.nursery_id AND v.lot_id = l.id), '[]') AS promised,
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', h.id, 'reason', h.reason, 'heldOn', h.held_on, 'releasedOn', h.released_on, 'releaseReason', h.release_reason)
                                 ORDER BY h.released_on DESC NULLS FIRST, h.held_on DESC) FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id), '[]') AS holds,
      coalesce((SELECT jsonb_agg(jsonb_build_object('kind', g.parent_kind, 'id', g.parent_id, 'code', coalesce(pl.code, pb.code), 'container', pc.name, 'units', 0) ORDER BY coalesce(pl.code, pb.code))
         FROM lineage g LEFT JOIN lot pl ON pl.nursery_id = g.nursery_id AND pl.id = g.parent_id LEFT JOIN batch pb ON pb.nursery_id = g.nursery_id AND pb.id = g.parent_id
         LEFT JOIN container_named pc ON pc.nursery_id = g.nursery_id AND pc.id = coalesce(pl.container_id, pb.container_id)
        WHERE g.nursery_id = l.nursery_id AND g.child_lot_id = l.id), '[]') AS parents,
      coalesce((SELECT jsonb_agg(jsonb_build_object('kind', 'lot', 'id', cl.id, 'code', cl.code, 'container', cc.name, 'units',
                   (SELECT coalesce(sum(a.units), 0)::int FROM account a WHERE a.nursery_id = cl.nursery_id AND a.lot_id = cl.id AND a.units > 0)) ORDER BY cl.code)
         FROM lineage g JOIN lot cl ON cl.nursery_id = g.nursery_id AND cl.id = g.child_lot_id JOIN container_named cc ON cc.nursery_id = cl.nursery_id AND cc.id = cl.container_id
        WHERE g.nursery_id = l.nursery_id AND g.parent_id = l.id), '[]') AS children,
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', m.id, 'code', m.code) ORDER BY m.code) FROM source_named m WHERE m.nursery_id = l.nursery_id AND m.mother_lot_id = l.id), '[]') AS "cuttingsOf"
    FROM lot l
    JOIN nursery_settings n ON n.id = l.nursery_id
    JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
    JOIN source_named s ON s.nursery_id = l.nursery_id AND s.id = l.source_id
    JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
   WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ${lotId}::uuid`;
  return row;
}

/**
 * A lot's entries: those that moved its units and those that were about it, the day they happened on first and then the order of writing
 * down, since an evening's entries carry yesterday's date. Only the lot's own movements are read of each,
 * so that an entry over five hundred lots costs no more here than one over a single lot. Each end of a movement is looked up by itself:
 * joined in, there are more tables than the planner reorders, and it reads every account of the nursery.
 */
export async function loadLotEntries(
  { tx, nurseryId }: ReadContext,
  lotId: string,
  before: { happenedOn: string; version: number } | null,
  limit: number,
): Promise<EntryRow[]> {
  return tx.rows(entryRow)`
    WITH own AS MATERIALIZED (SELECT a.id FROM account a WHERE a.nursery_id = ${nurseryId}::uuid AND a.lot_id = ${lotId}::uuid),
    concerned AS (
      SELECT m.entry_id FROM own JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = own.id
      UNION SELECT m.entry_id FROM own JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.to_account_id = own.id
      UNION SELECT s.entry_id FROM entry_subject s WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_id = ${lotId}::uuid),
    shown AS MATERIALIZED (
      SELECT e.* FROM concerned c JOIN entry e ON e.nursery_id = ${nurseryId}::uuid AND e.id = c.entry_id
       WHERE ${before === null} OR (e.happened_on, e.version) < (${before?.happenedOn ?? null}::date, ${before?.version ?? null}::bigint)
       ORDER BY e.happened_on DESC, e.version DESC LIMIT ${limit})
    SELECT e.id::text, e.version::int, e.kind, e.happened_on::text AS "happenedOn", to_char(e.recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "recordedAt",
           w.name AS person, e.cause, e.note, e.details - 'purpose' - 'checks' - 'from' - 'closings' - 'countKinds' AS details,
           e.reverses_id::text AS "reversesId",
           (SELECT jsonb_build_object('id', r.id, 'happenedOn', r.happened_on) FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS "reversedBy",
           coalesce((SELECT jsonb_agg(jsonb_build_object('from', (SELECT d.described FROM account_described(m.nursery_id, m.from_account_id) d),
                'to', (SELECT d.described FROM account_described(m.nursery_id, m.to_account_id) d), 'fromUnits', m.from_units, 'toUnits', m.to_units) ORDER BY m.line)
              FROM movement m
             WHERE m.nursery_id = e.nursery_id AND m.entry_id = e.id AND (m.from_account_id IN (SELECT id FROM own) OR m.to_account_id IN (SELECT id FROM own))), '[]') AS movements,
           (SELECT jsonb_build_object('kind', o.kind, 'result', o.result, 'amount', o.amount) FROM observation o WHERE o.nursery_id = e.nursery_id AND o.entry_id = e.id LIMIT 1) AS observation,
           (SELECT jsonb_build_object('upUnits', sum(c.up_units), 'deadUnits', sum(c.dead_units), 'notUpUnits', sum(c.not_up_units)) FROM spring_count c
             WHERE c.nursery_id = e.nursery_id AND c.entry_id = e.id AND c.lot_id = ${lotId}::uuid HAVING count(*) > 0) AS spring,
           (SELECT jsonb_build_object('product', t.product, 'reentryAt', t.reentry_at) FROM treatment t WHERE t.nursery_id = e.nursery_id AND t.entry_id = e.id LIMIT 1) AS treatment
      FROM shown e LEFT JOIN nursery_people() w ON w.person_id = e.person_id ORDER BY e.happened_on DESC, e.version DESC`;
}
