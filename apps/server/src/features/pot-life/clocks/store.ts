import type { PlantByResult, PlantingWindow, PotLifeRule, RootHabit } from '@rootclock/domain';
import { Prisma } from '../../../db/generated/client.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

/** A lot, or a batch in cells, as far as its clocks are concerned. */
export interface ClockSubject {
  kind: 'lot' | 'batch';
  id: string;
  plantId: string;
  genus: string;
  rootHabit: RootHabit;
  dormantMonths: number[];
  containerId: string | null;
  containerMl: number | null;
  confinedOn: string | null;
  containerOn: string | null;
  readyOn: string | null;
  /** Whether all of it stands where the cold cannot reach it. */
  coldSheltered: boolean;
  isLive: boolean;
  closedOn: string | null;
  stored: {
    plantByOn: string | null;
    state: string;
    limitOn: string | null;
    ruleId: string | null;
    windowId: string | null;
    nextOpensOn: string | null;
  };
}

/** Loads what is needed to reckon clocks: the lots and batches named, or all that are open. */
export async function loadClockSubjects(
  { tx, nurseryId }: ReadContext,
  which: { lots: string[]; batches: string[] } | 'all-open',
): Promise<ClockSubject[]> {
  // Two statements and not one with a switch: a plan that must serve both could use no index for either.
  const lots = which === 'all-open' ? Prisma.sql`l.closed_on IS NULL` : Prisma.sql`l.id = ANY (${which.lots}::uuid[])`;
  const batches =
    which === 'all-open' ? Prisma.sql`b.closed_on IS NULL` : Prisma.sql`b.id = ANY (${which.batches}::uuid[])`;
  return tx.$queryRaw<ClockSubject[]>`
    SELECT 'lot' AS kind, l.id::text, p.id::text AS "plantId", p.genus, p.root_habit AS "rootHabit", p.dormant_months AS "dormantMonths",
           l.container_id::text AS "containerId", c.volume_ml AS "containerMl", l.confined_on::text AS "confinedOn", l.container_on::text AS "containerOn",
           l.ready_on::text AS "readyOn", coalesce(s.sheltered, false) AS "coldSheltered", coalesce(s.units, 0) > 0 AS "isLive", l.closed_on::text AS "closedOn",
           jsonb_build_object('plantByOn', l.plant_by_on, 'state', l.plant_by_state, 'limitOn', l.limit_on, 'ruleId', l.rule_id, 'windowId', l.window_id, 'nextOpensOn', l.next_opens_on) AS stored
      FROM lot l
      JOIN plant p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      LEFT JOIN LATERAL (SELECT sum(a.units) AS units, bool_and(coalesce(w.winter_cover, true)) AS sheltered
                           FROM account a LEFT JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                          WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0) s ON true
     WHERE l.nursery_id = ${nurseryId}::uuid AND ${lots}
    UNION ALL
    SELECT 'batch', b.id::text, p.id::text, p.genus, p.root_habit, p.dormant_months, b.container_id::text,
           c.volume_ml, b.confined_on::text, b.container_on::text,
           b.ready_on::text, coalesce(s.sheltered, false), coalesce(s.units, 0) > 0, b.closed_on::text,
           jsonb_build_object('plantByOn', b.plant_by_on, 'state', b.plant_by_state, 'limitOn', b.limit_on, 'ruleId', b.rule_id, 'windowId', b.window_id, 'nextOpensOn', b.next_opens_on)
      FROM batch b
      JOIN plant p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
      LEFT JOIN container c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN LATERAL (SELECT sum(a.units) AS units, bool_and(w.winter_cover) AS sheltered
                           FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                          WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0) s ON true
     WHERE b.nursery_id = ${nurseryId}::uuid AND ${batches}`;
}

export interface ClockRules {
  rules: PotLifeRule[];
  windows: PlantingWindow[];
  freezeMd: string;
}

export async function loadClockRules({ tx, nurseryId }: ReadContext): Promise<ClockRules> {
  const [row] = await tx.$queryRaw<ClockRules[]>`
    SELECT freeze_md AS "freezeMd",
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', r.id, 'basis', r.basis, 'span', r.span,
                  'reach', jsonb_build_object('lotId', r.lot_id, 'plantId', r.plant_id, 'containerId', r.container_id, 'genus', r.genus, 'rootHabit', r.root_habit),
                  'winterCarry', CASE WHEN r.carry_max_days IS NULL THEN NULL ELSE jsonb_build_object('maxDays', r.carry_max_days, 'graceDays', r.carry_grace_days) END))
                  FROM pot_life_rule r WHERE r.nursery_id = n.id AND r.retired_at IS NULL), '[]') AS rules,
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', w.id, 'opensMd', w.opens_md, 'closesMd', w.closes_md, 'maxContainerMl', w.max_container_ml, 'region', w.region))
                  FROM planting_window w WHERE w.nursery_id = n.id AND w.retired_at IS NULL), '[]') AS windows
      FROM nursery n WHERE n.id = ${nurseryId}::uuid`;
  return row ?? { rules: [], windows: [], freezeMd: '11-15' };
}

export interface ReckonedClock {
  id: string;
  closedOn: string | null;
  result: PlantByResult;
}

export async function storeClocks(
  { tx, nurseryId }: CommandContext,
  kind: 'lot' | 'batch',
  clocks: readonly ReckonedClock[],
): Promise<void> {
  if (clocks.length === 0) return;
  const rows = JSON.stringify(
    clocks.map(({ id, closedOn, result }) => ({
      id,
      closedOn,
      plantByOn: result.plantByOn,
      state: result.state,
      limitOn: result.limitOn,
      ruleId: result.ruleId,
      windowId: result.window?.id ?? null,
      nextOpensOn: result.nextOpensOn,
    })),
  );
  if (kind === 'lot') {
    await tx.$executeRaw`
      UPDATE lot l SET closed_on = r."closedOn", plant_by_on = r."plantByOn", plant_by_state = r.state, limit_on = r."limitOn", rule_id = r."ruleId",
                       window_id = r."windowId", next_opens_on = r."nextOpensOn"
        FROM jsonb_to_recordset(${rows}::jsonb) AS r (id uuid, "closedOn" date, "plantByOn" date, state text, "limitOn" date, "ruleId" uuid, "windowId" uuid, "nextOpensOn" date)
       WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = r.id`;
  } else {
    await tx.$executeRaw`
      UPDATE batch b SET plant_by_on = r."plantByOn", plant_by_state = r.state, limit_on = r."limitOn", rule_id = r."ruleId",
                         window_id = r."windowId", next_opens_on = r."nextOpensOn"
        FROM jsonb_to_recordset(${rows}::jsonb) AS r (id uuid, "plantByOn" date, state text, "limitOn" date, "ruleId" uuid, "windowId" uuid, "nextOpensOn" date)
       WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = r.id`;
  }
}
