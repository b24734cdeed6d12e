import { SEED_ARRIVALS, SEED_STORAGES, SEED_TAKINGS, VIABILITY_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, grams, gramsOrNone, id, longText, share } from '../fields.ts';

const note = z._default(longText, '');

/** Seed that comes into a source's store. */
export const receiveSeed = z.strictObject({
  sourceId: id,
  kind: z.enum(SEED_ARRIVALS),
  grams,
  happenedOn: calendarDate,
  note,
});

/** What the balance says is there; the difference to the books is booked, up or down. */
export const weighSeed = z.strictObject({ sourceId: id, grams: gramsOrNone, happenedOn: calendarDate, note });

/** Seed that leaves the store other than by being sown. */
export const takeSeed = z.strictObject({
  sourceId: id,
  reason: z.enum(SEED_TAKINGS),
  grams,
  happenedOn: calendarDate,
  note,
});

/** A new source of the same plant, made of seed of others by weight. */
export const blendSources = z.strictObject({
  /** Of the blend, which is made. */
  sourceId: id,
  parts: z.array(z.strictObject({ sourceId: id, grams })).check(z.maxLength(20)),
  happenedOn: calendarDate,
  storage: z.optional(z.nullable(z.enum(SEED_STORAGES))),
  note,
});

/** Takes one booking back, and of a blend all of them. */
export const takeBackSeed = z.strictObject({ movementId: id, note });

export const recordViabilityTest = z.strictObject({
  testId: id,
  sourceId: id,
  testedOn: calendarDate,
  method: z.enum(VIABILITY_METHODS),
  seedsPerReplicate: z.int().check(z.gte(1), z.lte(1000)),
  /** Sound seeds of each replicate, in the order they were counted. */
  replicates: z.array(z.int().check(z.gte(0), z.lte(1000))).check(z.minLength(1), z.maxLength(16)),
  /** Seed that took up no water, and seed that was alive and did not come up; shares of all that were tested. */
  hardShare: z._default(share, 0),
  dormantShare: z._default(share, 0),
  note,
});

export const withdrawViabilityTest = z.strictObject({ testId: id });
