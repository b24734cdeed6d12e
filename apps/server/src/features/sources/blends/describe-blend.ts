import { agreedOn, blendSeed, type SeedStorage } from '@rootclock/domain';
import type { SourceFacts, SourceFields } from '../store.ts';

/** What the parts do not agree on; the page says of each that it is mixed. */
export type MixedField = 'provenance' | 'seedZone' | 'origin';

export interface DescribedBlend {
  fields: SourceFields;
  /** Of the blend's weight, in the order of the parts. */
  shares: number[];
  mixed: MixedField[];
}

/** As long as a source's provenance may be. */
const MOST_WORDS = 500;

/**
 * What can be said of a blend as of one source: whatever all parts agree on. Where they differ the provenances stand side by side, and
 * a seed zone or origin is not known, so that no order is served by a claim that holds for a part alone.
 */
export function describeBlend(
  parts: readonly { source: SourceFacts; grams: number }[],
  own: { storage: SeedStorage | null; storedOn: string; note: string },
): DescribedBlend {
  const all = <Value extends string>(of: (source: SourceFacts) => Value | null): Value | null =>
    agreedOn(parts.map(({ source }) => of(source)));
  const differ = (of: (source: SourceFacts) => string | null) =>
    new Set(parts.map(({ source }) => of(source))).size > 1;
  const { shares, purity, seedsPerGram, gatheredOn, sowFresh, neverDry } = blendSeed(
    parts.map(({ source, grams }) => ({ ...source, grams })),
  );
  const gatheredPrecision =
    gatheredOn === null
      ? null
      : (parts.find(({ source }) => source.gatheredOn === gatheredOn)?.source.gatheredPrecision ?? null);
  return {
    shares,
    mixed: (['provenance', 'seedZone', 'origin'] as const).filter((field) => differ((source) => source[field])),
    fields: {
      kind: all(({ kind }) => kind) ?? 'unknown',
      provenance: [...new Set(parts.flatMap(({ source }) => source.provenance || []))].join(' + ').slice(0, MOST_WORDS),
      seedZone: all(({ seedZone }) => seedZone),
      origin: all(({ origin }) => origin) ?? 'unknown',
      gatheredOn,
      gatheredPrecision,
      collector: all(({ collector }) => collector),
      permit: all(({ permit }) => permit),
      vendor: all(({ vendor }) => vendor),
      vendorLot: all(({ vendorLot }) => vendorLot),
      pesticideStatement: all(({ pesticideStatement }) => pesticideStatement),
      motherLotId: all(({ motherLotId }) => motherLotId),
      note: own.note,
      rawGrams: null,
      cleanedGrams: null,
      purity,
      seedsPerGram,
      sowFresh,
      neverDry,
      storage: own.storage,
      storedOn: own.storedOn,
    },
  };
}
