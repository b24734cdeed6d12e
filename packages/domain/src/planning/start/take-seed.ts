import { compareText } from '../../kernel/text.ts';
import { plantsFrom } from './amounts.ts';
import type { WantedFor } from './draft.ts';
import type { StartDraft } from './draft.ts';
import type { PlanSource } from './facts.ts';
import { gramsFor, seedsOf, sizeFor, type StartSize, trayful } from './size.ts';
import { inOrderOfUse, isFreshOn, sourcesFor } from './sources.ts';

/** A batch with the source it is taken from, cut to what the seed allows. */
export interface Sourced {
  draft: StartDraft;
  /** What gives all that is wanted of it. */
  size: StartSize;
  source: PlanSource;
  /** What the source holds when the batches before this one have taken theirs; null where nothing was ever weighed. */
  gramsLeft: number | null;
}
export interface SeedAnswer {
  /** What would give all that is wanted, whatever the seed. */
  full: StartSize;
  sourced: Sourced | null;
  /** What the seed does not suffice for. */
  short: WantedFor[];
}

/** Grams left by source, as the batches of a plan take theirs one after the other. */
export class SeedLeft {
  readonly #grams: Map<string, number | null>;

  constructor(sources: readonly PlanSource[]) {
    this.#grams = new Map(sources.map(({ id, gramsLeft }) => [id, gramsLeft]));
  }
  of({ id }: Pick<PlanSource, 'id'>): number | null {
    return this.#grams.get(id) ?? null;
  }
  take(source: PlanSource, grams: number | null): void {
    const left = this.of(source);
    if (left !== null && grams !== null) this.#grams.set(source.id, Math.max(0, left - grams));
  }
}

/** The units, in whole trays, that some grams of a source suffice for; seeds that cannot be weighed limit nothing. */
function countedWithin(draft: StartDraft, source: PlanSource, grams: number, most: number): number {
  const step = trayful(draft);
  const needs = (steps: number) => gramsFor(seedsOf(draft, steps * step), source) ?? 0;
  let low = 0;
  let high = Math.ceil(most / step);
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (needs(middle) <= grams) low = middle;
    else high = middle - 1;
  }
  return low * step;
}

/** Parts what is wanted into the first `plants` of it and the rest. */
function cutAt(wanted: readonly WantedFor[], plants: number): { kept: WantedFor[]; rest: WantedFor[] } {
  let left = plants;
  const parts = wanted.map(({ demand, units }) => {
    const kept = Math.min(left, units);
    left -= kept;
    return { demand, kept, rest: units - kept };
  });
  return {
    kept: parts.filter(({ kept }) => kept > 0).map(({ demand, kept }) => ({ demand, units: kept })),
    rest: parts.filter(({ rest }) => rest > 0).map(({ demand, rest }) => ({ demand, units: rest })),
  };
}

/**
 * Takes the seed of a batch from the best source that has enough, else from the one that has most, and cuts the batch to that. Seed that was never
 * weighed, or of which nobody knows how many make a gram, is taken to suffice. `left` is lowered by what is taken.
 */
export function takeSeed(
  draft: StartDraft,
  sources: readonly PlanSource[],
  left: SeedLeft,
  confidence: number,
): SeedAnswer {
  const fitting = inOrderOfUse(
    sourcesFor(sources, draft.plant, draft.protocol.method, draft.wish).filter((source) =>
      isFreshOn(source, draft.timing.startOn),
    ),
    (source) => left.of(source),
  );
  const full = sizeFor(draft, draft.wantedUnits, confidence);
  const countedOf = (source: PlanSource): number => {
    const grams = left.of(source);
    return draft.protocol.method !== 'seed' || grams === null
      ? full.counted
      : countedWithin(draft, source, grams, full.counted);
  };
  const weighed = fitting.map((source) => ({ source, counted: countedOf(source) }));
  const [best] = [...weighed].sort(
    (a, b) =>
      Number(b.counted >= full.counted) - Number(a.counted >= full.counted) ||
      (a.counted >= full.counted ? 0 : b.counted - a.counted || compareText(a.source.id, b.source.id)),
  );
  const plants =
    best === undefined || best.counted >= full.counted
      ? draft.wantedUnits
      : Math.min(draft.wantedUnits, plantsFrom(best.counted, draft.success, confidence));
  if (best === undefined || plants === 0) return { full, sourced: null, short: [...draft.wanted] };
  const { kept, rest } = cutAt(draft.wanted, plants);
  const cut = rest.length === 0 ? draft : { ...draft, wanted: kept, wantedUnits: plants };
  const gramsLeft = left.of(best.source);
  const size = cut === draft ? full : sizeFor(cut, cut.wantedUnits, confidence);
  left.take(best.source, gramsFor(size.seeds, best.source));
  return { sourced: { draft: cut, size, source: best.source, gramsLeft }, short: rest, full };
}
