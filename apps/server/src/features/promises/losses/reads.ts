import { type Page, promises } from '@rootclock/contracts';
import { ENTRY_KINDS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../trpc/operation.ts';

const MOST_CODES = 5;

const storedCause = z.strictObject({
  units: z.number(),
  happenedOn: z.string(),
  source: z.enum(['day', 'entry', 'order', 'setting']),
  entryKind: z.nullable(z.enum(ENTRY_KINDS)),
  personName: z.nullable(z.string()),
  lossId: z.string(),
  /** What the entry itself was about. */
  subjects: z.array(z.strictObject({ id: z.string(), code: z.string() })),
  /** What the line gave up of each lot and batch. */
  supplies: z.array(
    z.strictObject({
      id: z.string(),
      code: z.string(),
      why: z.enum([
        'gone',
        'not-accepted',
        'held',
        'provenance-zone',
        'provenance-unknown',
        'not-wild-type',
        'wild-type-unknown',
        'treated',
        'treatment-unknown',
        'not-native',
        'not-ready',
        'past-plant-by',
        'released-by-hand',
        'to-others',
      ]),
    }),
  ),
});
type StoredCause = z.infer<typeof storedCause>;

const storedLoss = z.strictObject({
  plantId: z.string(),
  scientificName: z.string(),
  units: z.number(),
  lineId: z.string(),
  orderId: z.string(),
  orderCode: z.string(),
  clientName: z.string(),
  siteName: z.nullable(z.string()),
  dueOn: z.string(),
  containerCode: z.string(),
  shortUnits: z.number(),
  causes: z.array(storedCause),
});

const listedLoss = z.strictObject({ row: storedLoss, total: z.number() });

/** Lines that lost plants and are still short, the nearest day first, with what happened to them. */
export const listLosses = query({
  name: 'listLosses',
  input: promises.listLosses,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, { page, perPage }): Promise<Page<promises.LossRow>> => {
    const rows = await tx.rows(listedLoss)`
      WITH lost AS MATERIALIZED (
        SELECT l.*, o.code AS order_code, o.due_on, o.client_id, o.site_id, g.filled, count(*) OVER ()::int AS total
          FROM (SELECT DISTINCT line_id FROM line_loss WHERE nursery_id = ${nurseryId}::uuid AND settled_on IS NULL) x
          JOIN line_told l ON l.nursery_id = ${nurseryId}::uuid AND l.id = x.line_id AND l.withdrawn_on IS NULL
          JOIN order_named o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'
          CROSS JOIN LATERAL (SELECT s.reserved_units + s.staged_units + s.delivered_units AS filled FROM line_progress s WHERE s.nursery_id = l.nursery_id AND s.line_id = l.id OFFSET 0) g
         WHERE l.units > g.filled
         ORDER BY o.due_on, l.rank
         LIMIT ${perPage} OFFSET ${(page - 1) * perPage}),
      named AS (
        SELECT nursery_id, id, code FROM lot_named WHERE nursery_id = ${nurseryId}::uuid UNION ALL SELECT nursery_id, id, code FROM batch_named WHERE nursery_id = ${nurseryId}::uuid)
      SELECT l.total, jsonb_build_object('lineId', l.id, 'orderId', l.order_id, 'orderCode', l.order_code, 'clientName', k.name, 'siteName', t.name, 'dueOn', l.due_on,
               'plantId', l.plant_id, 'scientificName', p.scientific_name, 'containerCode', c.code, 'units', l.units, 'shortUnits', l.units - l.filled,
               'causes', (
                 SELECT jsonb_agg(jsonb_build_object('lossId', x.id, 'units', x.units, 'happenedOn', x.happened_on, 'source', x.cause, 'entryKind', e.kind, 'personName', w.name,
                          'subjects', coalesce((
                            SELECT jsonb_agg(jsonb_build_object('id', n.id, 'code', n.code) ORDER BY n.code) FROM named n WHERE n.id IN (
                              SELECT s.subject_id FROM entry_about s WHERE s.nursery_id = x.nursery_id AND s.entry_id = x.command_id
                              UNION SELECT coalesce(a.lot_id, a.batch_id) FROM movement_told m JOIN account_told a ON a.nursery_id = m.nursery_id AND a.id IN (m.from_account_id, m.to_account_id)
                                     WHERE m.nursery_id = x.nursery_id AND m.entry_id = x.command_id)), '[]'),
                          'supplies', (SELECT jsonb_agg(jsonb_build_object('id', n.id, 'code', n.code, 'why', u.why) ORDER BY n.code)
                                         FROM jsonb_to_recordset(x.supplies) AS u ("supplyId" uuid, why text) JOIN named n ON n.id = u."supplyId")) ORDER BY d.version DESC)
                   FROM line_loss x
                   JOIN command_taken d ON d.nursery_id = x.nursery_id AND d.id = x.command_id
                   LEFT JOIN nursery_people() w ON w.person_id = d.person_id
                   LEFT JOIN entry_told e ON e.nursery_id = x.nursery_id AND e.id = x.command_id
                  WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id AND x.settled_on IS NULL)) AS row
        FROM lost l
        JOIN client_named k ON k.nursery_id = l.nursery_id AND k.id = l.client_id
        LEFT JOIN site_named t ON t.nursery_id = l.nursery_id AND t.id = l.site_id
        JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
        JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
       ORDER BY l.due_on, l.rank`;
    return {
      rows: rows.map(({ row }) => ({ ...row, lossId: row.causes[0]?.lossId ?? '', causes: row.causes.map(shown) })),
      total: rows[0]?.total ?? 0,
      page,
      perPage,
    };
  },
});

/**
 * Which lots and batches to name: those the line gave up and the entry was about; where the line only gave way to others, those the entry was
 * about; and where there was no entry, those the line gave up.
 */
function shown({
  subjects,
  supplies,
  units,
  happenedOn,
  source,
  entryKind,
  personName,
}: StoredCause): promises.LossCause {
  const about = new Set(subjects.map(({ id }) => id));
  const hit = supplies.filter(({ id }) => about.has(id));
  const named = [hit, subjects, supplies].find((rows) => rows.length > 0) ?? [];
  return {
    units,
    happenedOn,
    source,
    entryKind,
    personName,
    codes: named.slice(0, MOST_CODES).map(({ code }) => code),
    whys: [...new Set((hit.length > 0 ? hit : supplies).map(({ why }) => why))],
  };
}
