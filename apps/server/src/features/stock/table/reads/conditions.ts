import type { stock } from '@rootclock/contracts';
import { nameKey } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { containing } from '../../../../db/like.ts';
import { join, sql, type Sql } from '../../../../db/sql.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { inBand } from './bands.ts';

type Filter = z.output<typeof stock.listLots>;

const ON_HAND = sql`coalesce((SELECT sum(a.units) FROM account a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0), 0)`;
const IS_HELD = sql`EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL)`;
const FREE = sql`f.free_units`;

/** Free units of the lot `l` as `f`, joined only where they decide which lots are shown: once for each lot, and not at all for other lists. */
export const freeUnits = ({ free, sort }: Filter): Sql =>
  free || sort === 'free'
    ? sql`CROSS JOIN LATERAL (SELECT free_units FROM free_units WHERE nursery_id = l.nursery_id AND lot_id = l.id OFFSET 0) f`
    : sql``;

const KEYS: Record<Filter['sort'], Sql> = {
  code: sql`l.code`,
  plant: sql`p.scientific_name`,
  plantBy: sql`l.plant_by_on`,
  units: ON_HAND,
  free: FREE,
  potted: sql`l.potted_on`,
};

/** What the lots are put in order by. */
export const keyOf = ({ sort }: Filter): Sql => KEYS[sort];

/** Which lots are meant; `l` is the lot, `p` its plant, `within` the place asked for with all that lies in it. */
export function conditionsOf({ nurseryId, today }: ReadContext, filter: Filter, noticeDays: number): Sql {
  const conditions = [sql`l.nursery_id = ${nurseryId}::uuid`];
  const when = (wanted: unknown, condition: Sql) => wanted && conditions.push(condition);
  when(filter.state === 'open', sql`l.closed_on IS NULL`);
  when(filter.state === 'closed', sql`l.closed_on IS NOT NULL`);
  when(filter.plantId, sql`l.plant_id = ${filter.plantId}::uuid`);
  when(filter.containerId, sql`l.container_id = ${filter.containerId}::uuid`);
  when(filter.sourceId, sql`l.source_id = ${filter.sourceId}::uuid`);
  when(
    filter.placeId,
    sql`l.id IN (SELECT a.lot_id FROM account a WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0 AND a.place_id IN (SELECT id FROM within))`,
  );
  when(filter.text, named(nurseryId, filter.text));
  when(filter.free, sql`${FREE} > 0`);
  if (filter.held) conditions.push(heldBy(filter.held));
  if (filter.band === 'no-window') conditions.push(sql`l.plant_by_state = 'no-window'`);
  else if (filter.band) conditions.push(inBand(sql`l.plant_by_on`, filter.band, today, noticeDays));
  return join(conditions, ' AND ');
}

function named(nurseryId: string, text: string): Sql {
  const key = nameKey(text);
  return sql`(l.code ILIKE ${containing(text)} OR p.scientific_name ILIKE ${containing(text)} OR l.plant_id IN (
    SELECT n.plant_id FROM plant_called n WHERE n.nursery_id = ${nurseryId}::uuid AND ${key !== ''} AND n.name_key LIKE ${containing(key)}))`;
}

function heldBy(held: NonNullable<Filter['held']>): Sql {
  if (held === 'none') return sql`NOT ${IS_HELD}`;
  if (held === 'any') return IS_HELD;
  return sql`EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL AND h.reason = ${held})`;
}
