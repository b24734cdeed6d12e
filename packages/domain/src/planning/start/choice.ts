import type { CalendarDate } from '../../kernel/dates.ts';
import { compareText } from '../../kernel/text.ts';
import { windowsFor } from '../../pot-life/windows.ts';
import { unitsToStart } from '../../propagation/seed/units-to-start.ts';
import { PROPAGATION_METHODS } from '../../propagation/words.ts';
import type { Shortage } from '../missing.ts';
import { sownIntoId, successOf } from './amounts.ts';
import type { PlanContainer, PlanPlant, PlanProtocol, PlanSeasons, PlanSource } from './facts.ts';
import { isFreshOn, sourcesFor, type SourceWish } from './sources.ts';
import { firstOpenDay, type StartState, startTiming, type StartTiming } from './timing.ts';

/** Why a shortage cannot be met by starting anything. */
export const UNMET_REASONS = [
  'no-protocol',
  'nothing-passes',
  'no-source',
  'seed-not-fresh',
  'not-enough-seed',
  'no-space',
  'too-far-ahead',
] as const;
export type UnmetReason = (typeof UNMET_REASONS)[number];

/** The most units for one plant: beyond it a protocol is taken to give nothing. */
const MOST_FOR_ONE = 1000;

export interface ChoiceFacts {
  today: CalendarDate;
  confidence: number;
  seasons: PlanSeasons;
  protocols: readonly PlanProtocol[];
  sources: readonly PlanSource[];
  plants: ReadonlyMap<string, PlanPlant>;
  containers: ReadonlyMap<string, PlanContainer>;
}

/** How one shortage is best met, if it can be. */
export interface Choice {
  shortage: Shortage;
  protocol: PlanProtocol;
  plant: PlanPlant;
  container: PlanContainer;
  sownInto: PlanContainer | null;
  timing: StartTiming;
  wish: SourceWish;
}
export interface Unmet {
  shortage: Shortage;
  units: number;
  reason: UnmetReason;
}

/** The day plants have to be ready: an order's own, and for what is only expected the first open day of its season, since nobody plants before. */
function targetOf({ demand }: Shortage, container: PlanContainer, { today, seasons }: ChoiceFacts): CalendarDate {
  const on = demand.on < today ? today : demand.on;
  if (demand.kind !== 'expected') return on;
  return firstOpenDay(windowsFor(seasons.windows, { containerMl: container.volumeMl, region: null }), on) ?? on;
}

/** Whether it starts this week or later is no difference between ways that are both in time. */
const LATENESS: Record<StartState, number> = { coming: 0, due: 0, overdue: 1, 'too-late': 2 };
const betterFirst = (a: Choice, b: Choice): number =>
  LATENESS[a.timing.state] - LATENESS[b.timing.state] ||
  Number(fits(b)) - Number(fits(a)) ||
  Number(b.protocol.label === '') - Number(a.protocol.label === '') ||
  PROPAGATION_METHODS.indexOf(a.protocol.method) - PROPAGATION_METHODS.indexOf(b.protocol.method) ||
  compareText(a.protocol.label, b.protocol.label) ||
  compareText(a.protocol.protocolId, b.protocol.protocolId);
const fits = ({ protocol, container }: Choice) => protocol.targetContainerId === container.id;

/**
 * The protocol by which a shortage is met: one by which it can be in time, meant for the container, the usual treatment, in the order of methods.
 * Answers the first thing in the way where none will do: no protocol, a protocol by which nothing passes, no source, only seed that had to be sown fresh.
 */
export function chooseStart(shortage: Shortage, facts: ChoiceFacts): Choice | Unmet {
  const { demand, units } = shortage;
  const plant = facts.plants.get(demand.plantId);
  const container = facts.containers.get(demand.containerId);
  const protocols = facts.protocols.filter(({ plantId }) => plantId === demand.plantId);
  const unmet = (reason: UnmetReason): Unmet => ({ shortage, units, reason });
  if (!plant || !container || protocols.length === 0) return unmet('no-protocol');
  const passing = protocols.filter((protocol) => {
    const fewest = unitsToStart({ wanted: units, success: successOf(protocol.passing), confidence: facts.confidence });
    return fewest !== null && fewest <= units * MOST_FOR_ONE;
  });
  if (passing.length === 0) return unmet('nothing-passes');
  const wish = { seedZone: demand.seedZone, wildType: demand.wildType };
  const sourced = passing.filter(({ method }) => sourcesFor(facts.sources, plant, method, wish).length > 0);
  if (sourced.length === 0) return unmet('no-source');
  const windows = windowsFor(facts.seasons.windows, { containerMl: container.volumeMl, region: null });
  const targetOn = targetOf(shortage, container, facts);
  const choices = sourced
    .map((protocol): Choice => ({
      shortage,
      protocol,
      plant,
      container,
      wish,
      sownInto: facts.containers.get(sownIntoId(protocol) ?? '') ?? null,
      timing: startTiming(protocol.plan, { today: facts.today, targetOn, confidence: facts.confidence, windows }),
    }))
    .filter(({ protocol, timing }) =>
      sourcesFor(facts.sources, plant, protocol.method, wish).some((source) => isFreshOn(source, timing.startOn)),
    );
  const [best] = choices.sort(betterFirst);
  return best ?? unmet('seed-not-fresh');
}

export const isUnmet = (answer: Choice | Unmet): answer is Unmet => 'reason' in answer;
