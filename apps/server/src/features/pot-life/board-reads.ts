import { potLife } from '@rootclock/contracts';
import {
  BATCH_UNITS,
  HOLD_REASONS,
  PLANT_BY_STATES,
  POT_LIFE_BASES,
  ROOT_HABITS,
  STANDINGS,
  addDays,
  daysBetween,
  EVERYONE,
  isDormant,
  potBand,
  type PotBand,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../db/sql.ts';
import { query, type ReadContext } from '../../trpc/operation.ts';
import { inBand } from '../stock/bands.ts';
import { boardConditions, openStock } from './open-stock-reads.ts';

const storedEntry = z.strictObject({
  id: z.string(),
  kind: z.enum(['lot', 'batch']),
  plantId: z.string(),
  scientificName: z.string(),
  code: z.string(),
  vernacularName: z.string(),
  lastEmergenceMd: z.nullable(z.string()),
  window: z.nullable(z.strictObject({ opensMd: z.string(), closesMd: z.string() })),
  containerName: z.nullable(z.string()),
  reservedUnits: z.number(),
  stagedUnits: z.number(),
  unit: z.union([z.literal('plant'), z.enum(BATCH_UNITS)]),
  plantByOn: z.nullable(z.string()),
  readyOn: z.nullable(z.string()),
  places: z.array(z.strictObject({ placeId: z.string(), code: z.string(), units: z.number() })),
  onHandUnits: z.number(),
  freeUnits: z.number(),
  holds: z.array(z.enum(HOLD_REASONS)),
  state: z.enum(PLANT_BY_STATES),
  limitOn: z.nullable(z.string()),
  nextOpensOn: z.nullable(z.string()),
  clockOn: z.nullable(z.string()),
  clockAssumed: z.boolean(),
  rule: z.nullable(
    z.strictObject({
      ruleId: z.string(),
      basis: z.enum(POT_LIFE_BASES),
      span: z.nullable(z.string()),
      reach: z.strictObject({
        lot: z.boolean(),
        scientificName: z.nullable(z.string()),
        genus: z.nullable(z.string()),
        rootHabit: z.nullable(z.enum(ROOT_HABITS)),
        containerName: z.nullable(z.string()),
      }),
      standing: z.enum(STANDINGS),
      source: z.nullable(z.string()),
    }),
  ),
  rootCheckedOn: z.nullable(z.string()),
  dormantMonths: z.array(z.number()),
});
type StoredEntry = z.infer<typeof storedEntry>;

const storedBoard = z.strictObject({
  counts: z.record(z.string(), z.number()),
  weeks: z.array(z.strictObject({ weekOn: z.string(), units: z.number(), freeUnits: z.number() })),
  total: z.number(),
  rows: z.array(storedEntry),
});
type Stored = z.infer<typeof storedBoard>;

/** Every lot, and every batch in cells, by the day it must be in the ground. */
export const readBoard = query({
  name: 'readBoard',
  isHeavy: true,
  input: potLife.readBoard,
  roles: EVERYONE,
  read: async (context, input): Promise<potLife.Board> => {
    const { today } = context;
    const { noticeDays, windows } = await readSettings(context);
    const { rows, ...about } = await readStock(context, input, noticeDays);
    return {
      rows: rows.map((row) => boardRow(row, today, noticeDays)),
      ...about,
      page: input.page,
      perPage: input.perPage,
      windows,
      noticeDays,
      today,
    };
  },
});

const settingsRow = z.strictObject({
  noticeDays: z.number(),
  windows: z.array(z.strictObject({ opensMd: z.string(), closesMd: z.string() })),
});

/** How long before its day a plant is due, and the windows that are for all plants. */
async function readSettings({ tx, nurseryId }: ReadContext): Promise<Pick<potLife.Board, 'noticeDays' | 'windows'>> {
  const settings = await tx.row(settingsRow)`
    SELECT n.notice_days AS "noticeDays", coalesce((SELECT json_agg(json_build_object('opensMd', w.opens_md, 'closesMd', w.closes_md) ORDER BY w.opens_md) FROM planting_window w
             WHERE w.nursery_id = n.id AND w.retired_at IS NULL AND w.max_container_ml IS NULL AND w.region IS NULL), '[]') AS windows
      FROM nursery_settings n WHERE n.id = ${nurseryId}::uuid`;
  return settings ?? { noticeDays: 0, windows: [] };
}

/**
 * The rows of the page, how many lie in each band, and how many units must leave in which week over the year that begins two months ago. All in
 * one statement, since what stands open is most of the work and is worked out once for all three. Only what is counted or sorted by is carried
 * for every lot; bands and weeks are made of the sums of days, which are few, and the rest is looked up for the rows of the page alone.
 */
async function readStock(
  { tx, nurseryId, today }: ReadContext,
  input: z.output<typeof potLife.readBoard>,
  noticeDays: number,
): Promise<Stored> {
  const band = (name: PotBand) => inBand(sql`plant_by_on`, name, today, noticeDays);
  const stored = await tx.row(storedBoard)`
    WITH ${openStock(nurseryId)},
    days AS (
      SELECT mother, plant_by_on, plant_by_state, count(*)::int AS many, sum(on_hand) AS on_hand, sum(free) AS free
        FROM stock GROUP BY mother, plant_by_on, plant_by_state),
    counted AS (
      SELECT ${manyWhere(sql`NOT mother AND ${band('past')}`)} AS past,
             ${manyWhere(sql`NOT mother AND ${band('due')}`)} AS due,
             ${manyWhere(sql`NOT mother AND ${band('coming')}`)} AS coming,
             ${manyWhere(sql`NOT mother AND ${band('ample')}`)} AS ample,
             ${manyWhere(sql`NOT mother AND ${band('unlimited')}`)} AS unlimited,
             ${manyWhere(sql`mother`)} AS "mother-stock",
             ${manyWhere(sql`NOT mother AND plant_by_state = 'no-window'`)} AS "no-window",
             ${manyWhere(sql`NOT mother AND plant_by_state = 'winter-carry'`)} AS "winter-carry"
        FROM days),
    leaving AS (
      SELECT date_trunc('week', plant_by_on)::date::text AS "weekOn", sum(on_hand)::int AS units, sum(free)::int AS "freeUnits"
        FROM days WHERE NOT mother AND plant_by_on BETWEEN ${addDays(today, -60)}::date AND ${addDays(today, 380)}::date GROUP BY 1),
    shown AS (
      SELECT s.* FROM stock s WHERE ${boardConditions(nurseryId, input, today, noticeDays)}
       ORDER BY s.mother, s.plant_by_on ASC NULLS LAST, s.code LIMIT ${input.perPage} OFFSET ${(input.page - 1) * input.perPage}),
    clocked AS (
      SELECT s.id, 'plant' AS unit, l.container_id, l.limit_on, l.next_opens_on, l.rule_id, l.window_id, l.confined_on, l.container_on,
             l.confined_standing, l.container_standing, l.ready_on, l.root_checked_on
        FROM shown s JOIN lot_told l ON l.nursery_id = ${nurseryId}::uuid AND l.id = s.id
      UNION ALL
      SELECT s.id, b.unit, b.container_id, b.limit_on, b.next_opens_on, b.rule_id, b.window_id, b.confined_on, b.container_on,
             'recorded', 'recorded', b.ready_on, NULL
        FROM shown s JOIN batch_told b ON b.nursery_id = ${nurseryId}::uuid AND b.id = s.id),
    stood AS (
      SELECT s.id, json_agg(json_build_object('placeId', o.id, 'code', o.code, 'units', a.units) ORDER BY o.code) AS places
        FROM shown s JOIN account_told a ON a.nursery_id = ${nurseryId}::uuid AND a.units > 0 AND (a.lot_id = s.id OR a.batch_id = s.id)
        JOIN place_named o ON o.nursery_id = a.nursery_id AND o.id = a.place_id GROUP BY s.id),
    page AS (
      SELECT s.kind, k.unit, s.id::text, s.code, p.id::text AS "plantId", p.scientific_name AS "scientificName",
             p.vernacular_name AS "vernacularName", p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd",
             c.name AS "containerName", s.on_hand AS "onHandUnits", s.staged AS "stagedUnits", s.reserved AS "reservedUnits",
             s.free AS "freeUnits", s.plant_by_on::text AS "plantByOn", s.plant_by_state AS state, k.limit_on::text AS "limitOn",
             k.next_opens_on::text AS "nextOpensOn",
             CASE WHEN r.basis = 'confined' THEN k.confined_on ELSE k.container_on END::text AS "clockOn",
             CASE WHEN r.basis = 'confined' THEN k.confined_standing ELSE k.container_standing END = 'assumed' AS "clockAssumed",
             k.ready_on::text AS "readyOn", k.root_checked_on::text AS "rootCheckedOn",
             CASE WHEN r.id IS NULL THEN NULL ELSE json_build_object('ruleId', r.id, 'basis', r.basis, 'span', r.span, 'standing', r.standing, 'source', r.source,
               'reach', json_build_object('lot', r.lot_id IS NOT NULL, 'scientificName', rp.scientific_name, 'genus', r.genus, 'rootHabit', r.root_habit, 'containerName', rc.name)) END AS rule,
             CASE WHEN w.id IS NULL THEN NULL ELSE json_build_object('opensMd', w.opens_md, 'closesMd', w.closes_md) END AS window,
             coalesce(s.holds, '{}') AS holds, coalesce(t.places, '[]') AS places
        FROM shown s
        JOIN clocked k ON k.id = s.id
        LEFT JOIN stood t ON t.id = s.id
        JOIN plant_named p ON p.nursery_id = ${nurseryId}::uuid AND p.id = s.plant_id
        LEFT JOIN container_named c ON c.nursery_id = ${nurseryId}::uuid AND c.id = k.container_id
        LEFT JOIN pot_life_rule r ON r.nursery_id = ${nurseryId}::uuid AND r.id = k.rule_id
        LEFT JOIN plant_named rp ON rp.nursery_id = r.nursery_id AND rp.id = r.plant_id
        LEFT JOIN container_named rc ON rc.nursery_id = r.nursery_id AND rc.id = r.container_id
        LEFT JOIN planting_window w ON w.nursery_id = ${nurseryId}::uuid AND w.id = k.window_id
       ORDER BY s.mother, s.plant_by_on ASC NULLS LAST, s.code)
    SELECT (SELECT to_json(counted) FROM counted) AS counts, coalesce((SELECT json_agg(l ORDER BY l."weekOn") FROM leaving l), '[]') AS weeks,
           (SELECT count(*)::int FROM stock s WHERE ${boardConditions(nurseryId, input, today, noticeDays)}) AS total,
           coalesce((SELECT json_agg(page) FROM page), '[]') AS rows`;
  if (!stored) throw new Error('the board answered no row');
  return stored;
}

const manyWhere = (condition: Sql): Sql => sql`coalesce(sum(many) FILTER (WHERE ${condition}), 0)::int`;

function boardRow({ dormantMonths, ...row }: StoredEntry, today: string, noticeDays: number): potLife.BoardRow {
  return {
    ...row,
    ...potBand(row.plantByOn, today, noticeDays),
    share: shareOfLife(row.clockOn, row.plantByOn, today),
    dormant: isDormant(dormantMonths, today),
    potUpHelps: row.rule?.basis === 'container',
  };
}

function shareOfLife(clockOn: string | null, plantByOn: string | null, today: string): number | null {
  if (!clockOn || !plantByOn) return null;
  const whole = daysBetween(clockOn, plantByOn);
  return whole <= 0 ? 1 : Math.min(1, Math.max(0, daysBetween(clockOn, today) / whole));
}
