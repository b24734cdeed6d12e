import type { SourceKind } from './source-words.ts';

/** Sources that hold seed to weigh; of plants and beds, cuttings and divisions are taken, which nobody weighs. */
export const SEED_KINDS: readonly SourceKind[] = ['seed-collection', 'bought-seed', 'unknown'];

export const SEED_STORAGES = ['room', 'cold-dry', 'cold-moist', 'frozen'] as const;
export type SeedStorage = (typeof SEED_STORAGES)[number];

/** How seed came into a store, and how some of it leaves again other than by being sown. */
export const SEED_ARRIVALS = ['gathered', 'bought', 'cleaned'] as const;
export type SeedArrival = (typeof SEED_ARRIVALS)[number];
export const SEED_TAKINGS = ['given', 'discarded', 'tested'] as const;
export type SeedTaking = (typeof SEED_TAKINGS)[number];

export const SEED_MOVEMENT_KINDS = [
  ...SEED_ARRIVALS,
  'sown',
  ...SEED_TAKINGS,
  'blended-out',
  'blended-in',
  'weighed',
  'taken-back',
] as const;
export type SeedMovementKind = (typeof SEED_MOVEMENT_KINDS)[number];

/** A germination test counts seedlings, the other two count sound seed, which may still be dormant. */
export const VIABILITY_METHODS = ['germination', 'tetrazolium', 'cut'] as const;
export type ViabilityMethod = (typeof VIABILITY_METHODS)[number];
