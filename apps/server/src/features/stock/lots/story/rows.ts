import {
  COUNT_KINDS,
  HOLD_REASONS,
  PLACE_KINDS,
  PLANT_BY_STATES,
  POT_LIFE_BASES,
  ROOT_HABITS,
} from '@rootclock/domain';
import * as z from 'zod/mini';

/** What stands where, as the lot's page shows it. */
export const standingRow = z.strictObject({
  placeId: z.string(),
  code: z.string(),
  name: z.string(),
  kind: z.enum(PLACE_KINDS),
  units: z.number(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
});
export type StandingRow = z.infer<typeof standingRow>;

export const stagedRow = z.strictObject({
  lineId: z.string(),
  orderId: z.string(),
  orderCode: z.string(),
  client: z.string(),
  units: z.number(),
});
export type StagedRow = z.infer<typeof stagedRow>;

export const promisedRow = z.strictObject({
  ...stagedRow.shape,
  dueOn: z.string(),
  pinned: z.boolean(),
});
export type PromisedRow = z.infer<typeof promisedRow>;

export const holdRow = z.strictObject({
  id: z.string(),
  reason: z.enum(HOLD_REASONS),
  heldOn: z.string(),
  releasedOn: z.nullable(z.string()),
  releaseReason: z.nullable(z.string()),
});
export type HoldRow = z.infer<typeof holdRow>;

export const kinRow = z.strictObject({
  kind: z.enum(['lot', 'batch']),
  id: z.string(),
  code: z.string(),
  container: z.nullable(z.string()),
  units: z.number(),
});
export type KinRow = z.infer<typeof kinRow>;

/** The rule that binds, as data for a sentence. */
export const bindingRule = z.strictObject({
  id: z.string(),
  basis: z.enum(POT_LIFE_BASES),
  span: z.nullable(z.string()),
  lotId: z.nullable(z.string()),
  plant: z.nullable(z.string()),
  genus: z.nullable(z.string()),
  rootHabit: z.nullable(z.enum(ROOT_HABITS)),
  container: z.nullable(z.string()),
  standing: z.string(),
  source: z.nullable(z.string()),
  note: z.string(),
});
export type BindingRule = z.infer<typeof bindingRule>;

/** What the lot's page needs in one row. */
export const lotRow = z.strictObject({
  id: z.string(),
  code: z.string(),
  plant: z.strictObject({
    id: z.string(),
    code: z.string(),
    scientificName: z.string(),
    vernacularName: z.string(),
    rootHabit: z.enum(ROOT_HABITS),
    larvalHost: z.boolean(),
    handling: z.array(z.string()),
    dormantMonths: z.array(z.number()),
    lastEmergenceMd: z.nullable(z.string()),
  }),
  source: z.strictObject({
    id: z.string(),
    code: z.string(),
    kind: z.string(),
    provenance: z.string(),
    seedZone: z.nullable(z.string()),
    origin: z.string(),
    gatheredOn: z.nullable(z.string()),
    gatheredPrecision: z.nullable(z.string()),
    vendor: z.nullable(z.string()),
    pesticideStatement: z.nullable(z.string()),
  }),
  container: z.strictObject({
    id: z.string(),
    code: z.string(),
    name: z.string(),
    kind: z.string(),
    volumeMl: z.nullable(z.number()),
    cells: z.nullable(z.number()),
  }),
  pottedOn: z.string(),
  pottedPrecision: z.string(),
  confinedOn: z.nullable(z.string()),
  confinedStanding: z.enum(['recorded', 'assumed']),
  containerOn: z.nullable(z.string()),
  containerStanding: z.enum(['recorded', 'assumed']),
  readyOn: z.nullable(z.string()),
  rootCheckedOn: z.nullable(z.string()),
  countKind: z.enum(COUNT_KINDS),
  plantByOn: z.nullable(z.string()),
  plantByState: z.enum(PLANT_BY_STATES),
  limitOn: z.nullable(z.string()),
  nextOpensOn: z.nullable(z.string()),
  closedOn: z.nullable(z.string()),
  note: z.string(),
  rule: z.nullable(bindingRule),
  standing: z.array(standingRow),
  staged: z.array(stagedRow),
  promised: z.array(promisedRow),
  holds: z.array(holdRow),
  parents: z.array(kinRow),
  children: z.array(kinRow),
  /** Sources that were taken from this lot as mother stock. */
  cuttingsOf: z.array(z.strictObject({ id: z.string(), code: z.string() })),
  noticeDays: z.number(),
});
export type LotRow = z.infer<typeof lotRow>;

/** One end of a movement as people read it. */
export const endRow = z.union([
  z.strictObject({
    kind: z.literal('place'),
    lotId: z.nullable(z.string()),
    batchId: z.nullable(z.string()),
    code: z.string(),
    place: z.string(),
  }),
  z.strictObject({ kind: z.literal('staged'), lotId: z.string(), code: z.string(), order: z.string() }),
  z.strictObject({ kind: z.literal('outside'), outside: z.string() }),
]);
export type EndRow = z.infer<typeof endRow>;

export const entryRow = z.strictObject({
  id: z.string(),
  version: z.number(),
  kind: z.string(),
  happenedOn: z.string(),
  recordedAt: z.string(),
  person: z.nullable(z.string()),
  cause: z.nullable(z.string()),
  note: z.string(),
  details: z.record(z.string(), z.unknown()),
  reversesId: z.nullable(z.string()),
  reversedBy: z.nullable(z.strictObject({ id: z.string(), happenedOn: z.string() })),
  movements: z.array(z.strictObject({ from: endRow, to: endRow, fromUnits: z.number(), toUnits: z.number() })),
  observation: z.nullable(
    z.strictObject({ kind: z.string(), result: z.nullable(z.string()), amount: z.nullable(z.number()) }),
  ),
  treatment: z.nullable(z.strictObject({ product: z.string(), reentryAt: z.nullable(z.string()) })),
  /** What a spring count found of this lot, at all its places together. */
  spring: z.nullable(z.strictObject({ upUnits: z.number(), deadUnits: z.number(), notUpUnits: z.number() })),
});
export type EntryRow = z.infer<typeof entryRow>;
