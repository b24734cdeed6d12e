import { COUNT_KINDS, HOLD_REASONS, LOSS_CAUSES, OBSERVATION_KINDS, ROOT_BALL_RESULTS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, longText, optionalText, shortText, units, unitsOrNone } from '../fields.ts';

const optionalId = z.optional(z.nullable(id));
const entry = { happenedOn: calendarDate, note: z._default(longText, '') };
/** One lot, and the place that is meant where it stands in several. */
const ofLot = { lotId: id, placeId: optionalId };

/** A lot that a command makes: its id is minted by the client, its code by the server. */
const newLot = z.strictObject({
  lotId: id,
  containerId: id,
  placeId: id,
  units,
  /** When the root balls are expected to hold; the check comes later. */
  readyOn: z.optional(z.nullable(calendarDate)),
});
const newLots = z.array(newLot).check(z.minLength(1), z.maxLength(20));

const someIds = z.array(id).check(z.minLength(1), z.maxLength(500));
/** Named lots, or all that stands at a place; with both, only what the named lots have at that place. */
const selection = { lotIds: z.optional(someIds), placeId: optionalId };
interface Selecting {
  lotIds?: string[] | undefined;
  placeId?: string | null | undefined;
}
const selects = <Input extends Selecting>() =>
  z.refine<Input>((input) => input.lotIds !== undefined || (input.placeId ?? null) !== null, {
    path: ['lotIds'],
    params: { problem: 'required' },
  });
const differentIds = z.refine<string[]>((ids) => new Set(ids).size === ids.length, {
  params: { problem: 'wrong-form' },
});

/** Plants of a lot that are gone. `placeId` is needed only where the lot stands in several places. */
export const loseFromLot = z.strictObject({
  ...ofLot,
  units,
  cause: z.enum(LOSS_CAUSES),
  ...entry,
  /** Said once more after the screen has asked whether the plant may only be dormant. */
  confirmed: z._default(z.boolean(), false),
});

/** The same loss over many lots: so many of each, or a share of each in per cent. */
export const loseMany = z
  .strictObject({
    ...selection,
    units: z.optional(z.nullable(units)),
    percent: z.optional(z.nullable(z.number().check(z.gte(0.01), z.lte(100)))),
    cause: z.enum(LOSS_CAUSES),
    ...entry,
    confirmed: z._default(z.boolean(), false),
  })
  .check(
    selects(),
    z.refine((input) => ((input.units ?? null) === null) !== ((input.percent ?? null) === null), {
      path: ['units'],
      params: { problem: 'required' },
    }),
  );

/** Plants out of one lot into other containers, unit by unit. */
export const potUpLot = z.strictObject({ ...ofLot, into: newLots, ...entry });

/** A lot may be named twice only with two different places, or its units would be taken twice. */
const eachOnce = z.refine<{ lotId: string; placeId?: string | null | undefined }[]>(
  (parts) =>
    parts.every((part, i) =>
      parts.every(
        (other, j) =>
          i === j ||
          part.lotId !== other.lotId ||
          Boolean(part.placeId && other.placeId && part.placeId !== other.placeId),
      ),
    ),
  { params: { problem: 'wrong-form' } },
);

export const CONVERSIONS = ['divide', 'clump', 'patch'] as const;
export type Conversion = (typeof CONVERSIONS)[number];

/** Plants cut into pieces, set together in one pot, or used to fill the gaps of a tray: both sides are counted. Either side has only one lot. */
export const convertLot = z
  .strictObject({
    conversion: z.enum(CONVERSIONS),
    from: z.array(z.strictObject({ ...ofLot, units })).check(z.minLength(1), z.maxLength(20), eachOnce),
    into: newLots,
    ...entry,
  })
  .check(
    z.refine((input) => input.from.length === 1 || input.into.length === 1, {
      path: ['into'],
      params: { problem: 'too-big' },
    }),
  );

/** Plants dug from a nursery bed and potted. `units` is what was dug, the new lots say how many pots it filled. */
export const liftFromBed = z.strictObject({ ...ofLot, units, into: newLots, ...entry });

/** Plants out of their pots into a nursery bed. Without a container named the nursery's ground is meant. */
export const plantInBed = z.strictObject({
  ...ofLot,
  units,
  into: z.strictObject({
    lotId: id,
    bedId: id,
    containerId: optionalId,
    countKind: z._default(z.enum(COUNT_KINDS), 'counted'),
  }),
  ...entry,
});

/** Part of a lot under a label of its own, in the same container. */
export const splitLot = z.strictObject({
  ...ofLot,
  into: z.array(z.strictObject({ lotId: id, placeId: id, units })).check(z.minLength(1), z.maxLength(20)),
  ...entry,
});

/** Leftovers of one plant, source and container under one label. Without a place each plant stays where it stands. */
export const mergeLots = z.strictObject({
  lotIds: z.array(id).check(z.minLength(2), z.maxLength(50), differentIds),
  into: z.strictObject({ lotId: id, placeId: optionalId }),
  ...entry,
});

/** A lot or part of it to another place, under the same label. Without units all of it at the place it leaves, or everywhere. */
export const moveLot = z.strictObject({ ...ofLot, units: z.optional(z.nullable(units)), toPlaceId: id, ...entry });
export const moveMany = z.strictObject({ ...selection, toPlaceId: id, ...entry }).check(selects());

/** What a recount found; the difference is booked as found or unexplained and never refused. */
export const countLot = z.strictObject({
  ...ofLot,
  countedUnits: unitsOrNone,
  countKind: z.enum(COUNT_KINDS),
  ...entry,
});

/** A lot, with all that came from it, is another plant than its label says. */
export const reIdentifyLot = z.strictObject({ lotId: id, plantId: id, ...entry });
/** A source, with every batch and lot that came from it, is another plant than its label says. */
export const reIdentifySource = z.strictObject({ sourceId: id, plantId: id, ...entry });

export const holdMany = z.strictObject({ ...selection, reason: z.enum(HOLD_REASONS), ...entry }).check(selects());
/** Ends a hold; why it may end is asked for, since whoever asks next year must find it. */
export const releaseLot = z.strictObject({
  lotId: id,
  reason: z.enum(HOLD_REASONS),
  releaseReason: shortText,
  ...entry,
});

/** Plants that left for somebody else's hands; `party` names the client or whoever took them. */
export const sellFromLot = z.strictObject({ ...ofLot, units, party: optionalText, ...entry });
export const giveFromLot = z.strictObject({ ...ofLot, units, party: optionalText, ...entry });

export const observeMany = z
  .strictObject({
    ...selection,
    kind: z.enum(OBSERVATION_KINDS),
    /** What the check of the root ball found, or the pest's name; what was seen in words goes into the note. */
    result: optionalText,
    /** Height in millimetres, or plants thinned. */
    amount: z.optional(z.nullable(unitsOrNone)),
    /** With a root ball that does not hold yet: when it is expected to. */
    readyOn: z.optional(z.nullable(calendarDate)),
    ...entry,
  })
  .check(
    selects(),
    z.refine((input) => input.kind !== 'root-ball' || ROOT_BALL_RESULTS.some((known) => known === input.result), {
      path: ['result'],
      params: { problem: 'not-a-choice' },
    }),
    z.refine((input) => input.kind !== 'height' || (input.amount ?? null) !== null, {
      path: ['amount'],
      params: { problem: 'required' },
    }),
  );

export const readLot = z.strictObject({ lotId: id });
/** Older entries of a lot's story: those that happened, or on the same day were written down, before the one named. */
export const readLotEntries = z.strictObject({
  lotId: id,
  before: z.strictObject({
    happenedOn: calendarDate,
    version: z.int().check(z.gte(1), z.lte(Number.MAX_SAFE_INTEGER)),
  }),
});
