import { InputError } from '../../kernel/input.ts';
import { mediaVolume, seedGrams } from '../../propagation/seed/amounts.ts';
import { unitsToStart } from '../../propagation/seed/units-to-start.ts';
import { countedIn, meanOf, plantsFrom, SEEDS_TO_A_FLAT } from './amounts.ts';
import type { StartDraft } from './draft.ts';
import type { PlanContainer, PlanSource } from './facts.ts';

/** The share by which growing medium packs down when it is watered in (assumed). */
export const MEDIUM_SETTLES = 0.15;

/** So much is started. */
export interface StartSize {
  /** Plants that it gives at the confidence, at most what is wanted. */
  plants: number;
  /** Plants that all of it gives at the confidence, and at the mean share: what may be expected of the batch. */
  cautiousPlants: number;
  usualPlants: number;
  /** Cells, pieces or seeds; see countedIn. */
  counted: number;
  /** Whole trays or flats they take; null for pots and loose pieces. */
  trays: number | null;
  /** In the unit the batch is counted in. */
  units: number;
  seeds: number | null;
  /** Plants to be potted, at the mean share. */
  potted: number;
}

/** How many cells or seeds go into one tray, so that only whole trays are started; 1 where units are started one by one. */
export function trayful({ protocol, sownInto }: Pick<StartDraft, 'protocol' | 'sownInto'>): number {
  const counted = countedIn(protocol, sownInto);
  if (counted === 'seeds') return protocol.seedsPerCell ?? SEEDS_TO_A_FLAT;
  return counted === 'cells' ? (sownInto?.cells ?? 1) : 1;
}

const traysOf = (draft: StartDraft, counted: number): number | null => {
  const inOne = countedIn(draft.protocol, draft.sownInto) === 'pieces' ? draft.sownInto?.cells : trayful(draft);
  return draft.sownInto === null || draft.sownInto.kind === 'pot' || inOne == null ? null : Math.ceil(counted / inOne);
};

/** Seeds for so many cells, or the seeds themselves; null where nothing is sown. */
export const seedsOf = (
  { protocol, sownInto }: Pick<StartDraft, 'protocol' | 'sownInto'>,
  counted: number,
): number | null =>
  protocol.method === 'seed'
    ? counted * (countedIn(protocol, sownInto) === 'seeds' ? 1 : (protocol.seedsPerCell ?? 1))
    : null;

/** The size of a batch of so many cells, pieces or seeds, of which `wanted` plants at most are asked for. */
export function sizeOf(draft: StartDraft, counted: number, confidence: number, wanted = draft.wantedUnits): StartSize {
  const { protocol } = draft;
  const trays = traysOf(draft, counted);
  const cautiousPlants = plantsFrom(counted, draft.success, confidence);
  return {
    plants: Math.min(wanted, cautiousPlants),
    cautiousPlants,
    usualPlants: Math.max(cautiousPlants, Math.round(counted * meanOf(draft.success))),
    counted,
    trays,
    units: protocol.startUnit === 'pack' ? 1 : protocol.startUnit === 'tray' ? (trays ?? 1) : counted,
    seeds: seedsOf(draft, counted),
    potted: Math.ceil(counted * draft.pottedShare - 1e-9),
  };
}

/** What has to be started so that `wanted` plants get ready at the confidence, in whole trays. Throws InputError as unitsToStart does. */
export function sizeFor(draft: StartDraft, wanted: number, confidence: number): StartSize {
  const fewest = unitsToStart({ wanted, success: draft.success, confidence });
  if (fewest === null) throw new InputError('success', 'must let some units pass for sure enough');
  const step = trayful(draft);
  return sizeOf(draft, Math.ceil(fewest / step) * step, confidence, wanted);
}

/** Grams of seed to take; null where nobody knows how many seeds a gram of the source holds. Of unknown purity all is taken to be seed. */
export function gramsFor(seeds: number | null, source: PlanSource): number | null {
  // Of what is no seed at all no weight gives any.
  if (seeds === null || source.seedsPerGram === null || source.purity === 0) return null;
  return seedGrams({ seeds, seedsPerGram: source.seedsPerGram, purity: source.purity ?? 1 });
}

const litres = (units: number, container: PlanContainer | null): number =>
  container?.volumeMl == null || units === 0 || container.kind === 'ground'
    ? 0
    : mediaVolume({ units, containerMl: container.volumeMl, settle: MEDIUM_SETTLES });

/** Litres of growing medium for the cells that are sown and the pots they are potted into. A flat without cells counts by what it holds. */
export function mediumFor(draft: StartDraft, size: StartSize): number {
  const { sownInto } = draft;
  const filled =
    sownInto?.kind === 'tray' && size.trays !== null
      ? size.trays * (sownInto.cells ?? 1)
      : sownInto?.kind === 'flat'
        ? (size.trays ?? 1)
        : size.counted;
  return (
    litres(sownInto === null ? 0 : filled, sownInto) +
    (draft.days.pottedOn === null ? 0 : litres(size.potted, draft.container))
  );
}
