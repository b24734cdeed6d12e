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
import { sql } from '../../../../db/sql.ts';
import { query, type ReadContext } from '../../../../trpc/operation.ts';
import { inBand } from '../../../stock/table/reads/bands.ts';
import { boardConditions, openStock } from './filters.ts';

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
 * one statement, since what stands open is most of the work and is worked out once for all three.
 */
async function readStock(
  { tx, nurseryId, today }: ReadContext,
  input: z.output<typeof potLife.readBoard>,
  noticeDays: number,
): Promise<Stored> {
  const band = (name: PotBand) => inBand(sql`plant_by_on`, name, today, noticeDays);
  const stored = await tx.row(storedBoard)`
    WITH ${openStock(nurseryId)},
    counted AS (
      SELECT count(*) FILTER (WHERE NOT mother AND ${band('past')})::int AS past,
             count(*) FILTER (WHERE NOT mother AND ${band('due')})::int AS due,
             count(*) FILTER (WHERE NOT mother AND ${band('coming')})::int AS coming,
             count(*) FILTER (WHERE NOT mother AND ${band('ample')})::int AS ample,
             count(*) FILTER (WHERE NOT mother AND ${band('unlimited')})::int AS unlimited,
             count(*) FILTER (WHERE mother)::int AS "mother-stock",
             count(*) FILTER (WHERE NOT mother AND plant_by_state = 'no-window')::int AS "no-window",
             count(*) FILTER (WHERE NOT mother AND plant_by_state = 'winter-carry')::int AS "winter-carry"
        FROM stock),
    leaving AS (
      SELECT date_trunc('week', plant_by_on)::date::text AS "weekOn", sum(on_hand)::int AS units, sum(free)::int AS "freeUnits"
        FROM stock WHERE NOT mother AND plant_by_on BETWEEN ${addDays(today, -60)}::date AND ${addDays(today, 380)}::date GROUP BY 1),
    matching AS MATERIALIZED (SELECT * FROM stock s WHERE ${boardConditions(input, today, noticeDays)}),
    shown AS (SELECT * FROM matching ORDER BY mother, plant_by_on ASC NULLS LAST, code LIMIT ${input.perPage} OFFSET ${(input.page - 1) * input.perPage}),
    page AS (
      SELECT s.kind, s.unit, s.id::text, s.code, p.id::text AS "plantId", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
             p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd", c.name AS "containerName", s.on_hand AS "onHandUnits", s.staged AS "stagedUnits",
             s.reserved AS "reservedUnits", s.free AS "freeUnits", s.plant_by_on::text AS "plantByOn", s.plant_by_state AS state, s.limit_on::text AS "limitOn", s.next_opens_on::text AS "nextOpensOn",
             CASE WHEN r.basis = 'confined' THEN s.confined_on ELSE s.container_on END::text AS "clockOn",
             CASE WHEN r.basis = 'confined' THEN s.confined_standing ELSE s.container_standing END = 'assumed' AS "clockAssumed",
             s.ready_on::text AS "readyOn", s.root_checked_on::text AS "rootCheckedOn",
             CASE WHEN r.id IS NULL THEN NULL ELSE json_build_object('ruleId', r.id, 'basis', r.basis, 'span', r.span, 'standing', r.standing, 'source', r.source,
               'reach', json_build_object('lot', r.lot_id IS NOT NULL, 'scientificName', rp.scientific_name, 'genus', r.genus, 'rootHabit', r.root_habit, 'containerName', rc.name)) END AS rule,
             CASE WHEN w.id IS NULL THEN NULL ELSE json_build_object('opensMd', w.opens_md, 'closesMd', w.closes_md) END AS window,
             coalesce((SELECT array_agg(h.reason ORDER BY h.reason) FROM hold h WHERE h.nursery_id = s.nursery_id AND h.lot_id = s.id AND h.released_on IS NULL), '{}') AS holds,
             coalesce((SELECT json_agg(json_build_object('placeId', o.id, 'code', o.code, 'units', a.units) ORDER BY o.code) FROM units_standing a
                         JOIN place_named o ON o.nursery_id = a.nursery_id AND o.id = a.place_id
                        WHERE a.nursery_id = s.nursery_id AND a.units > 0 AND (a.lot_id = s.id OR a.batch_id = s.id)), '[]') AS places
        FROM shown s
        JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
        LEFT JOIN container_named c ON c.nursery_id = s.nursery_id AND c.id = s.container_id
        LEFT JOIN pot_life_rule r ON r.nursery_id = s.nursery_id AND r.id = s.rule_id
        LEFT JOIN plant_named rp ON rp.nursery_id = r.nursery_id AND rp.id = r.plant_id
        LEFT JOIN container_named rc ON rc.nursery_id = r.nursery_id AND rc.id = r.container_id
        LEFT JOIN planting_window w ON w.nursery_id = s.nursery_id AND w.id = s.window_id
       ORDER BY s.mother, s.plant_by_on ASC NULLS LAST, s.code)
    SELECT (SELECT to_json(counted) FROM counted) AS counts, coalesce((SELECT json_agg(l ORDER BY l."weekOn") FROM leaving l), '[]') AS weeks,
           (SELECT count(*)::int FROM matching) AS total, coalesce((SELECT json_agg(page) FROM page), '[]') AS rows`;
  if (!stored) throw new Error('the board answered no row');
  return stored;
}

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
