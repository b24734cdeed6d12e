import type { sources } from '@rootclock/contracts';
import { SEED_KINDS } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { NOTHING_OF_SEED, type SeedFields } from '../store.ts';

/** What was said of a source's seed. Kinds that hold none keep nothing of it, whatever a form still carried. */
export function describeSeed(
  context: CommandContext,
  input: Omit<z.output<typeof sources.addSource>, 'plantId'>,
  gatheredOn: string | null,
): SeedFields {
  if (!SEED_KINDS.includes(input.kind)) return NOTHING_OF_SEED;
  const { rawGrams = null, cleanedGrams = null, storedOn = null } = input;
  requireCleaned(rawGrams, cleanedGrams, 'cleanedGrams');
  if (storedOn) requireSeedDay(context, storedOn, gatheredOn, 'storedOn');
  return {
    rawGrams,
    cleanedGrams,
    storedOn,
    purity: input.purity ?? null,
    seedsPerGram: input.seedsPerGram ?? null,
    sowFresh: input.sowFresh,
    neverDry: input.neverDry,
    storage: input.storage ?? null,
  };
}

/** Cleaning takes away and adds nothing. */
export function requireCleaned(raw: number | null, cleaned: number | null, field: string): void {
  if (raw !== null && cleaned !== null && cleaned > raw) refuse('cleaned-over-raw', { raw, cleaned }, field);
}

/** A day that has come, and not before the earliest day on which the seed can have been gathered. */
export function requireSeedDay(
  { today }: { today: string },
  day: string,
  gatheredOn: string | null,
  field = 'happenedOn',
): void {
  if (day > today) refuse('day-in-future', { day, today }, field);
  if (gatheredOn !== null && day < gatheredOn) refuse('day-too-early', { day, earliest: gatheredOn }, field);
}
