import { requireShare } from '../../kernel/input.ts';
import { productOfShares } from '../../propagation/learning/product-of-shares.ts';
import { STAGE_KINDS } from '../../propagation/protocol/stages.ts';
import type { Shapes } from '../../statistics/beta-binomial.ts';
import { betaBinomialUpperTail, binomialUpperTail } from '../../statistics/index.ts';
import { pottingStage } from './batch-days.ts';
import type { PlanContainer, PlanPassing, PlanProtocol } from './facts.ts';

/** What a batch is reckoned in until it is potted: cells with a plant each, pieces, or seeds in an open flat. */
export type CountedIn = 'cells' | 'pieces' | 'seeds';

/** The container that stands on the bench from sowing on: the one it is started in, or for packs the one their seed is sown into. */
export const sownIntoId = (
  protocol: Pick<PlanProtocol, 'startUnit' | 'startContainerId' | 'sowingContainerId'>,
): string | null =>
  protocol.startUnit === 'pack' ? (protocol.sowingContainerId ?? protocol.startContainerId) : protocol.startContainerId;

/** Seed in packs or whole trays is reckoned in the cells it is sown into; where those are not known, seed by seed. */
export function countedIn(
  { startUnit }: Pick<PlanProtocol, 'startUnit'>,
  sownInto: Pick<PlanContainer, 'kind' | 'cells'> | null,
): CountedIn {
  if (startUnit === 'piece') return 'pieces';
  if (startUnit === 'cell') return 'cells';
  return sownInto !== null && (sownInto.kind === 'pot' || (sownInto.cells ?? 0) > 0) ? 'cells' : 'seeds';
}

/** Seeds to an open flat where the protocol says nothing (assumed). */
export const SEEDS_TO_A_FLAT = 100;

/** The share of what is started that gets ready: exactly known where every stage's is, else the beta distribution of the product of what was learned. */
export function successOf(passing: readonly PlanPassing[]): number | Shapes {
  const known = passing.reduce(
    (product, { shapes, share }) => (shapes === null ? product * requireShare('share', share) : product),
    1,
  );
  const learned = passing.flatMap(({ shapes }) => (shapes === null ? [] : [shapes]));
  if (learned.length === 0 || known === 0) return known;
  // A known share among learned ones is a distribution without doubt.
  const sure = known === 1 ? [] : [{ alpha: known * SURE_TRIES, beta: (1 - known) * SURE_TRIES }];
  return productOfShares([...learned, ...sure]);
}
const SURE_TRIES = 1e9;

export const meanOf = (success: number | Shapes): number =>
  typeof success === 'number' ? success : success.alpha / (success.alpha + success.beta);

/** The probability that at least `wanted` of `started` get ready. */
export const chanceOf = (wanted: number, started: number, success: number | Shapes): number =>
  typeof success === 'number'
    ? binomialUpperTail({ atLeast: wanted, tried: started, share: success })
    : betaBinomialUpperTail({ atLeast: wanted, tried: started, ...success });

/** The standard deviation of how many of `started` units get ready. */
function spreadOf(started: number, success: number | Shapes): number {
  const mean = meanOf(success);
  const doubt =
    typeof success === 'number' ? 1 : (success.alpha + success.beta + started) / (success.alpha + success.beta + 1);
  return Math.sqrt(started * mean * (1 - mean) * doubt);
}

/**
 * The most plants that `started` units give at the confidence: the counterpart of unitsToStart. Each try sums as many terms as there are plants, so the
 * search begins about the mean, where the answer lies, and reaches out from there.
 */
export function plantsFrom(started: number, success: number | Shapes, confidence: number): number {
  const isSure = (plants: number) => chanceOf(plants, started, success) >= confidence;
  const spread = Math.max(1, spreadOf(started, success));
  const guess = Math.min(started, Math.max(0, Math.floor(started * meanOf(success) - spread)));
  let reach = Math.ceil(spread / 2);
  let low = guess;
  let high = guess;
  if (isSure(guess)) {
    for (high = Math.min(started, guess + reach); high < started && isSure(high); reach *= 2)
      high = Math.min(started, high + reach);
  } else {
    high = guess - 1;
    for (low = Math.max(0, guess - reach); low > 0 && !isSure(low); reach *= 2) low = Math.max(0, low - reach);
  }
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (isSure(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The mean share of units that are left when they are potted. */
export function shareAtPotting({ passing, plan }: PlanProtocol): number {
  const potting = pottingStage(plan.stages.map(({ kind }) => kind));
  if (potting === null) return passing.reduce((share, stage) => share * stage.share, 1);
  const before = (stage: PlanPassing) => STAGE_KINDS.indexOf(stage.stage) < STAGE_KINDS.indexOf(potting);
  return passing.filter(before).reduce((share, stage) => share * stage.share, 1);
}
