import { BATCH_UNITS, COUNT_KINDS, LOSS_CAUSES, PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, grams, id, longText, roughDay, units, unitsOrNone } from '../fields.ts';

const note = z._default(longText, '');
/** Needed only where the batch stands in several places. */
const placeId = z.optional(z.nullable(id));

/** What may be expected of a batch: the item it becomes, a cautious and a usual number of plants and the day they should be ready. */
const forecast = {
  targetContainerId: z.optional(z.nullable(id)),
  /** What may be promised. */
  cautiousUnits: z._default(unitsOrNone, 0),
  /** Left out, the cautious number holds for the usual case as well. */
  usualUnits: z.optional(z.nullable(unitsOrNone)),
  readyOn: z.optional(z.nullable(calendarDate)),
};

/** The place of a stage in its protocol, from 0. */
const stagePosition = z.int().check(z.gte(0), z.lte(10));

/** Either `units` in the unit of the batch, or whole `trays` whose cells the server reckons. */
export const startBatch = z
  .strictObject({
    batchId: id,
    plantId: id,
    sourceId: id,
    method: z.enum(PROPAGATION_METHODS),
    /** The version of a protocol that the batch keeps; unit, container and target that are left out are taken from it. */
    protocolVersionId: z.optional(z.nullable(id)),
    /** The stage it starts in, where that is not the first: seed that was bought stratified. */
    stagePosition: z.optional(z.nullable(stagePosition)),
    unit: z.optional(z.nullable(z.enum(BATCH_UNITS))),
    containerId: z.optional(z.nullable(id)),
    units: z.optional(z.nullable(units)),
    trays: z.optional(z.nullable(units)),
    /** Seeds, where somebody counted or weighed them; a seed that does not come up is no loss. */
    seedsSown: z.optional(z.nullable(units)),
    /** What is taken out of the source's store for it; of packs that are drawn on, what was taken out of them. */
    seedGrams: z.optional(z.nullable(grams)),
    /** Packs in stratification whose seed it is: how many are used up by it, none while they stay in use. */
    fromPacks: z.optional(z.nullable(z.strictObject({ batchId: id, units: unitsOrNone, placeId }))),
    placeId: id,
    happenedOn: calendarDate,
    ...forecast,
    note,
  })
  .check(
    z.refine((input) => (input.units == null) !== (input.trays == null), {
      path: ['units'],
      params: { problem: 'required' },
    }),
    z.refine((input) => input.unit != null || input.protocolVersionId != null, {
      path: ['unit'],
      params: { problem: 'required' },
    }),
    z.refine((input) => input.trays == null || input.unit == null || input.unit === 'cell', {
      path: ['trays'],
      params: { problem: 'not-a-choice' },
    }),
    z.refine((input) => input.stagePosition == null || input.protocolVersionId != null, {
      path: ['stagePosition'],
      params: { problem: 'not-a-choice' },
    }),
    z.refine((input) => input.seedsSown == null || input.method === 'seed', {
      path: ['seedsSown'],
      params: { problem: 'not-a-choice' },
    }),
    z.refine((input) => input.seedGrams == null || input.method === 'seed', {
      path: ['seedGrams'],
      params: { problem: 'not-a-choice' },
    }),
    z.refine((input) => input.fromPacks == null || input.method === 'seed', {
      path: ['fromPacks'],
      params: { problem: 'not-a-choice' },
    }),
  );

/** A stage of its protocol that the batch began on a day. */
export const beginBatchStage = z.strictObject({ batchId: id, position: stagePosition, happenedOn: calendarDate, note });

/** Plants alive (of cells: cells with plants) on a day. */
export const countBatch = z.strictObject({
  batchId: id,
  emergedUnits: unitsOrNone,
  countKind: z.enum(COUNT_KINDS),
  happenedOn: calendarDate,
  note,
});

/** Plants taken out so that the others have room: an observation, no loss of units. */
export const thinBatch = z.strictObject({
  batchId: id,
  /** Plants taken out, where somebody counted them. */
  thinnedUnits: z.optional(z.nullable(units)),
  happenedOn: calendarDate,
  note,
});

export const loseFromBatch = z.strictObject({
  batchId: id,
  units,
  placeId,
  cause: z.enum(LOSS_CAUSES),
  happenedOn: calendarDate,
  note,
  /** Said once more after the screen has asked whether the plants may only be dormant. */
  confirmed: z._default(z.boolean(), false),
});

/** One lot that plants of the batch went into, both sides counted. */
const potted = z.strictObject({
  lotId: id,
  /** 'existing' adds to a lot of the same batch that was begun a few days ago. */
  into: z._default(z.enum(['new', 'existing']), 'new'),
  containerId: z.optional(z.nullable(id)),
  placeId: id,
  fromPlaceId: placeId,
  /** Units taken out of the batch; none while a tray or pack stays in use. */
  unitsOut: unitsOrNone,
  /** Plants that stand in the lot's pots. */
  pottedUnits: units,
  /** The day they are expected to be ready; left out, the batch's own expectation holds for its target container. */
  readyOn: z.optional(z.nullable(calendarDate)),
});

export const potBatch = z
  .strictObject({
    batchId: id,
    happenedOn: calendarDate,
    /** When the first came up or rooted, if no count has said so: a day, a month, a season. */
    firstAlive: z.optional(z.nullable(roughDay)),
    lots: z.array(potted).check(z.minLength(1), z.maxLength(20)),
    note,
  })
  .check(
    z.refine((input) => new Set(input.lots.map((lot) => lot.lotId)).size === input.lots.length, {
      path: ['lots'],
      params: { problem: 'wrong-form' },
    }),
  );

/** All of it, or `units` of it, from one place to another. */
export const moveBatch = z.strictObject({
  batchId: id,
  toPlaceId: id,
  fromPlaceId: placeId,
  units: z.optional(z.nullable(units)),
  happenedOn: calendarDate,
  note,
});

export const setBatchForecast = z.strictObject({ batchId: id, happenedOn: calendarDate, ...forecast, note });

/** How many cells, trays, pieces or packs really stand there. */
export const correctBatchUnits = z.strictObject({
  batchId: id,
  units: unitsOrNone,
  placeId,
  countKind: z._default(z.enum(COUNT_KINDS), 'counted'),
  happenedOn: calendarDate,
  note,
});

/** Nothing may be left unaccounted for: what still stands is written off with a cause, or the batch stays open. */
export const closeBatch = z.strictObject({
  batchId: id,
  writeOffCause: z.optional(z.nullable(z.enum(LOSS_CAUSES))),
  happenedOn: calendarDate,
  note,
  confirmed: z._default(z.boolean(), false),
});

export const keepForSecondWinter = z.strictObject({ batchId: id, happenedOn: calendarDate, note });
