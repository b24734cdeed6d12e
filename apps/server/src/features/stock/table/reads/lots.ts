import { type Page, stock } from '@rootclock/contracts';
import {
  CONTAINER_KINDS,
  COUNT_KINDS,
  DAY_PRECISIONS,
  EVERYONE,
  HOLD_REASONS,
  isDormant,
  PLANT_BY_STATES,
  potBand,
  type PotBand,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql } from '../../../../db/sql.ts';
import { query } from '../../../../trpc/operation.ts';
import { conditionsOf, freeUnits, keyOf } from './conditions.ts';

const storedLot = z.strictObject({
  lotId: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  dormantMonths: z.array(z.number()),
  containerId: z.string(),
  containerName: z.string(),
  containerKind: z.enum(CONTAINER_KINDS),
  sourceId: z.string(),
  sourceCode: z.string(),
  pottedOn: z.string(),
  pottedPrecision: z.enum(DAY_PRECISIONS),
  countKind: z.enum(COUNT_KINDS),
  readyOn: z.nullable(z.string()),
  rootCheckedOn: z.nullable(z.string()),
  plantByOn: z.nullable(z.string()),
  plantByState: z.enum(PLANT_BY_STATES),
  limitOn: z.nullable(z.string()),
  nextOpensOn: z.nullable(z.string()),
  /** Since when the clock of the rule that binds runs, and whether that day is a guess. */
  clockOn: z.nullable(z.string()),
  clockAssumed: z.boolean(),
  closedOn: z.nullable(z.string()),
  places: z.array(z.strictObject({ placeId: z.string(), code: z.string(), units: z.number() })),
  onHandUnits: z.number(),
  reservedUnits: z.number(),
  /** What may still be promised: what stands outside quarantine places, less reserved; nothing of a held lot. */
  freeUnits: z.number(),
  stagedUnits: z.number(),
  holds: z.array(z.enum(HOLD_REASONS)),
  /** What of it stands in the place that was asked for, and in what lies in it. */
  here: z.number(),
  /** What the list is sorted by. */
  key: z.unknown(),
});
type StoredLot = z.infer<typeof storedLot>;

/** A row without a lot tells the total of a page on which none is shown. */
const listedLot = z.strictObject({ total: z.number(), lot: z.nullable(storedLot) });

export interface LotRow extends Omit<StoredLot, 'dormantMonths' | 'here' | 'key'> {
  hereUnits: number | null;
  band: PotBand;
  daysLeft: number | null;
  dormant: boolean;
}

const notice = z.strictObject({ noticeDays: z.number() });

/** The stock table: lots by any of their facts, with their units, their clock and what is promised of them. */
export const listLots = query({
  name: 'listLots',
  input: stock.listLots,
  roles: EVERYONE,
  read: async (context, input): Promise<Page<LotRow>> => {
    const { tx, nurseryId, today } = context;
    const nursery = await tx.row(
      notice,
    )`SELECT notice_days AS "noticeDays" FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
    const noticeDays = nursery?.noticeDays ?? 0;
    const direction = input.descending ? sql`DESC NULLS LAST` : sql`ASC NULLS LAST`;
    const place = input.placeId ?? null;
    // What decides which lots are shown is read of all of them, everything else only of those on the page: row by row, which OFFSET 0 holds the
    // planner to. Where it last counted tables that were nearly empty, it would join them whole with each other instead, for minutes.
    const rows = await tx.rows(listedLot)`
      WITH RECURSIVE within AS (
        SELECT p.id FROM place p WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = ${place}::uuid
        UNION SELECT p.id FROM place p JOIN within w ON p.parent_id = w.id WHERE p.nursery_id = ${nurseryId}::uuid),
      matching AS MATERIALIZED (
        SELECT l.id, l.code, ${keyOf(input)} AS key FROM lot l JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id ${freeUnits(input)}
         WHERE ${conditionsOf(context, input, noticeDays)}),
      shown AS (
        SELECT id, key FROM matching ORDER BY key ${direction}, code LIMIT ${input.perPage} OFFSET ${(input.page - 1) * input.perPage})
      SELECT t.total, row_to_json(x) AS lot FROM (SELECT count(*)::int AS total FROM matching) t LEFT JOIN (
        SELECT shown.key, l.id::text AS "lotId", l.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
               p.dormant_months AS "dormantMonths", c.id::text AS "containerId", c.name AS "containerName", c.kind AS "containerKind", s.id::text AS "sourceId", s.code AS "sourceCode",
               l.potted_on::text AS "pottedOn", l.potted_precision AS "pottedPrecision", l.count_kind AS "countKind", l.ready_on::text AS "readyOn", l.root_checked_on::text AS "rootCheckedOn",
               l.plant_by_on::text AS "plantByOn", l.plant_by_state AS "plantByState", l.limit_on::text AS "limitOn", l.next_opens_on::text AS "nextOpensOn",
               CASE WHEN r.basis = 'confined' THEN l.confined_on ELSE l.container_on END::text AS "clockOn",
               CASE WHEN r.basis = 'confined' THEN l.confined_standing ELSE l.container_standing END = 'assumed' AS "clockAssumed", l.closed_on::text AS "closedOn",
               coalesce(u.places, '[]') AS places, coalesce(u.on_hand, 0)::int AS "onHandUnits", coalesce(u.staged, 0)::int AS "stagedUnits", coalesce(u.here, 0)::int AS here,
               f.reserved_units AS "reservedUnits", f.free_units AS "freeUnits",
               coalesce((SELECT array_agg(h.reason ORDER BY h.reason) FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL), '{}') AS holds
          FROM shown
          CROSS JOIN LATERAL (SELECT * FROM lot WHERE nursery_id = ${nurseryId}::uuid AND id = shown.id OFFSET 0) l
          CROSS JOIN LATERAL (SELECT * FROM plant_named WHERE nursery_id = l.nursery_id AND id = l.plant_id OFFSET 0) p
          CROSS JOIN LATERAL (SELECT * FROM container_named WHERE nursery_id = l.nursery_id AND id = l.container_id OFFSET 0) c
          CROSS JOIN LATERAL (SELECT * FROM source_named WHERE nursery_id = l.nursery_id AND id = l.source_id OFFSET 0) s
          CROSS JOIN LATERAL (SELECT reserved_units, free_units FROM free_units WHERE nursery_id = l.nursery_id AND lot_id = l.id OFFSET 0) f
          LEFT JOIN LATERAL (SELECT basis FROM rule_named WHERE nursery_id = l.nursery_id AND id = l.rule_id OFFSET 0) r ON true
          LEFT JOIN LATERAL (
            SELECT jsonb_agg(jsonb_build_object('placeId', w.id, 'code', w.code, 'units', a.units) ORDER BY w.code) FILTER (WHERE a.kind = 'place') AS places,
                   sum(a.units) FILTER (WHERE a.kind = 'place') AS on_hand, sum(a.units) FILTER (WHERE a.kind = 'staged') AS staged,
                   sum(a.units) FILTER (WHERE a.place_id IN (SELECT id FROM within)) AS here
              FROM account a LEFT JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
             WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0) u ON true) x ON true
       ORDER BY x.key ${direction}, x.code`;
    return {
      rows: rows.flatMap(({ lot }) => (lot ? [shownLot(lot, today, noticeDays, place !== null)] : [])),
      total: rows[0]?.total ?? 0,
      page: input.page,
      perPage: input.perPage,
    };
  },
});

function shownLot(
  { dormantMonths, here, key: _key, ...lot }: StoredLot,
  today: string,
  noticeDays: number,
  placeAsked: boolean,
): LotRow {
  return {
    ...lot,
    ...potBand(lot.plantByOn, today, noticeDays),
    dormant: isDormant(dormantMonths, today),
    hereUnits: placeAsked ? here : null,
  };
}
