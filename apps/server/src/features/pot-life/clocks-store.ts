import { POT_LIFE_BASES, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql } from '../../db/sql.ts';
import type { ReadContext } from '../../trpc/operation.ts';
import { plantingWindow } from '../stock/windows-reads.ts';

/** A lot, or a batch in cells, as far as its clocks are concerned. */
export const clockSubject = z.strictObject({
  kind: z.enum(['lot', 'batch']),
  id: z.string(),
  plantId: z.string(),
  genus: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  dormantMonths: z.array(z.number()),
  containerId: z.nullable(z.string()),
  containerMl: z.nullable(z.number()),
  confinedOn: z.nullable(z.string()),
  containerOn: z.nullable(z.string()),
  readyOn: z.nullable(z.string()),
  /** Whether all of it stands where the cold cannot reach it. */
  coldSheltered: z.boolean(),
  isLive: z.boolean(),
  closedOn: z.nullable(z.string()),
  stored: z.strictObject({
    plantByOn: z.nullable(z.string()),
    state: z.string(),
    limitOn: z.nullable(z.string()),
    ruleId: z.nullable(z.string()),
    windowId: z.nullable(z.string()),
    nextOpensOn: z.nullable(z.string()),
  }),
});
export type ClockSubject = z.infer<typeof clockSubject>;

/** Loads what is needed to reckon clocks: the lots and batches named, or all that are open. */
export async function loadClockSubjects(
  { tx, nurseryId }: ReadContext,
  which: { lots: string[]; batches: string[] } | 'all-open',
): Promise<ClockSubject[]> {
  // Two statements and not one with a switch: a plan that must serve both could use no index for either.
  const lots = which === 'all-open' ? sql`l.closed_on IS NULL` : sql`l.id = ANY (${which.lots}::uuid[])`;
  const batches = which === 'all-open' ? sql`b.closed_on IS NULL` : sql`b.id = ANY (${which.batches}::uuid[])`;
  return tx.rows(clockSubject)`
    SELECT 'lot' AS kind, l.id::text, p.id::text AS "plantId", p.genus, p.root_habit AS "rootHabit", p.dormant_months AS "dormantMonths",
           l.container_id::text AS "containerId", c.volume_ml AS "containerMl", l.confined_on::text AS "confinedOn", l.container_on::text AS "containerOn",
           l.ready_on::text AS "readyOn", coalesce(s.sheltered, false) AS "coldSheltered", coalesce(s.units, 0) > 0 AS "isLive", l.closed_on::text AS "closedOn",
           jsonb_build_object('plantByOn', l.plant_by_on, 'state', l.plant_by_state, 'limitOn', l.limit_on, 'ruleId', l.rule_id, 'windowId', l.window_id, 'nextOpensOn', l.next_opens_on) AS stored
      FROM lot_told l
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      LEFT JOIN LATERAL (SELECT sum(a.units) AS units, bool_and(coalesce(w.winter_cover, true)) AS sheltered
                           FROM units_standing a LEFT JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                          WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0) s ON true
     WHERE l.nursery_id = ${nurseryId}::uuid AND ${lots}
    UNION ALL
    SELECT 'batch', b.id::text, p.id::text, p.genus, p.root_habit, p.dormant_months, b.container_id::text,
           c.volume_ml, b.confined_on::text, b.container_on::text,
           b.ready_on::text, coalesce(s.sheltered, false), coalesce(s.units, 0) > 0, b.closed_on::text,
           jsonb_build_object('plantByOn', b.plant_by_on, 'state', b.plant_by_state, 'limitOn', b.limit_on, 'ruleId', b.rule_id, 'windowId', b.window_id, 'nextOpensOn', b.next_opens_on)
      FROM batch_told b
      JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
      LEFT JOIN container_named c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN LATERAL (SELECT sum(a.units) AS units, bool_and(w.winter_cover) AS sheltered
                           FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                          WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0) s ON true
     WHERE b.nursery_id = ${nurseryId}::uuid AND ${batches}`;
}

export const clockRules = z.strictObject({
  rules: z.array(
    z.strictObject({
      id: z.string(),
      basis: z.enum(POT_LIFE_BASES),
      span: z.nullable(z.string()),
      reach: z.strictObject({
        lotId: z.optional(z.nullable(z.string())),
        plantId: z.optional(z.nullable(z.string())),
        containerId: z.optional(z.nullable(z.string())),
        genus: z.optional(z.nullable(z.string())),
        rootHabit: z.optional(z.nullable(z.enum(ROOT_HABITS))),
      }),
      winterCarry: z.optional(z.nullable(z.strictObject({ maxDays: z.number(), graceDays: z.number() }))),
    }),
  ),
  windows: z.array(plantingWindow),
  freezeMd: z.string(),
});
export type ClockRules = z.infer<typeof clockRules>;

export async function loadClockRules({ tx, nurseryId }: ReadContext): Promise<ClockRules> {
  const row = await tx.row(clockRules)`
    SELECT freeze_md AS "freezeMd",
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', r.id, 'basis', r.basis, 'span', r.span,
                  'reach', jsonb_build_object('lotId', r.lot_id, 'plantId', r.plant_id, 'containerId', r.container_id, 'genus', r.genus, 'rootHabit', r.root_habit),
                  'winterCarry', CASE WHEN r.carry_max_days IS NULL THEN NULL ELSE jsonb_build_object('maxDays', r.carry_max_days, 'graceDays', r.carry_grace_days) END))
                  FROM pot_life_rule r WHERE r.nursery_id = n.id AND r.retired_at IS NULL), '[]') AS rules,
      coalesce((SELECT jsonb_agg(jsonb_build_object('id', w.id, 'opensMd', w.opens_md, 'closesMd', w.closes_md, 'maxContainerMl', w.max_container_ml, 'region', w.region))
                  FROM planting_window w WHERE w.nursery_id = n.id AND w.retired_at IS NULL), '[]') AS windows
      FROM nursery_settings n WHERE n.id = ${nurseryId}::uuid`;
  return row ?? { rules: [], windows: [], freezeMd: '11-15' };
}
