import type { Standing } from '@rootclock/domain';

/**
 * One value of the reference data with the word it rests on. Standing is kept per value and never per plant: the same
 * plant may have a published seed count and a height that somebody merely remembers, and its page must show which is which.
 */
export interface Fact<V> {
  readonly value: V;
  readonly standing: Standing;
  /** Where the value can be read again; null for what is remembered, assumed or customary. */
  readonly source: string | null;
  readonly note?: string;
}

/** Lowest and highest printed figure, both included; a single figure is printed twice. */
export type Range = readonly [low: number, high: number];

function fact<V>(value: V, standing: Standing, source: string | null, note?: string): Fact<V> {
  return note === undefined ? { value, standing, source } : { value, standing, source, note };
}

/** Printed in the named public source. */
export const confirmed = <V>(value: V, source: string, note?: string): Fact<V> =>
  fact(value, 'confirmed', source, note);

/** Printed by someone who sells the plant or its seed. */
export const vendor = <V>(value: V, source: string, note?: string): Fact<V> =>
  fact(value, 'confirmed-vendor', source, note);

/** Plain arithmetic on figures of the named source. */
export const derived = <V>(value: V, source: string, note?: string): Fact<V> => fact(value, 'derived', source, note);

/** What growers do, without a published source. */
export const practice = <V>(value: V, note?: string): Fact<V> => fact(value, 'common practice', null, note);

/** Remembered, to be checked before anyone relies on it. */
export const memory = <V>(value: V, note?: string): Fact<V> => fact(value, 'from memory', null, note);

/** Taken for granted so that the product can work; the nursery should put its own figure here. */
export const assumed = <V>(value: V, note?: string): Fact<V> => fact(value, 'assumed', null, note);

/** A choice that belongs to the nursery and to nobody else. */
export const ownSetting = <V>(value: V, note?: string): Fact<V> => fact(value, 'own setting', null, note);

/** Looked for and not found, which is worth knowing too. */
export const notFound = (note?: string): Fact<null> => fact(null, 'not found', null, note);
