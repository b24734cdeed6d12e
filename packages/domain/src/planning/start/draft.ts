import { type CalendarDate, earliestOf, latestOf } from '../../kernel/dates.ts';
import { compareText } from '../../kernel/text.ts';
import type { Shapes } from '../../statistics/beta-binomial.ts';
import { type PlanDemand, planItem } from '../demand-facts.ts';
import { weekStart } from '../weeks.ts';
import { shareAtPotting, successOf } from './amounts.ts';
import { type BatchDays, batchDays } from './batch-days.ts';
import type { Choice, ChoiceFacts } from './choice.ts';
import type { PlanContainer, PlanPlant, PlanProtocol } from './facts.ts';
import { type PlannedPotLife, plannedPotLife } from './pot-life.ts';
import type { SourceWish } from './sources.ts';
import type { StartTiming } from './timing.ts';

/** Plants that a batch is to give for one demand. */
export interface WantedFor {
  demand: PlanDemand;
  units: number;
}

/** One batch to start: shortages of an item that begin in the same week under the same protocol and may come from the same sources. */
export interface StartDraft {
  key: string;
  item: string;
  protocol: PlanProtocol;
  plant: PlanPlant;
  /** The container they are wanted in, and the one they are sown into. */
  container: PlanContainer;
  sownInto: PlanContainer | null;
  wish: SourceWish;
  timing: StartTiming;
  days: BatchDays;
  /** The last day on which any of it is wanted. */
  wantedUntil: CalendarDate;
  wanted: readonly WantedFor[];
  wantedUnits: number;
  success: number | Shapes;
  /** The mean share of units that are left when they are potted. */
  pottedShare: number;
  potLife: PlannedPotLife;
}

const keyOf = ({ shortage, protocol, wish, timing }: Choice): string =>
  [
    planItem(shortage.demand),
    protocol.versionId,
    weekStart(timing.startOn),
    timing.state === 'overdue' || timing.state === 'too-late' ? timing.state : '',
    wish.seedZone ?? '',
    wish.wildType ? 'wild' : '',
  ].join('|');

/** Orders first, by rank; then what is expected, the most valuable first. */
const byWorth = (a: WantedFor, b: WantedFor): number =>
  (a.demand.rank ?? Number.MAX_SAFE_INTEGER) - (b.demand.rank ?? Number.MAX_SAFE_INTEGER) ||
  (b.demand.unitValue ?? 0) - (a.demand.unitValue ?? 0) ||
  compareText(a.demand.on, b.demand.on) ||
  compareText(a.demand.id, b.demand.id);

function draftOf(key: string, choices: readonly Choice[], { seasons }: Pick<ChoiceFacts, 'seasons'>): StartDraft {
  // What begins first decides, so that all of it is ready in time.
  const [first] = [...choices].sort(
    (a, b) =>
      compareText(a.timing.startOn, b.timing.startOn) ||
      compareText(a.timing.targetOn, b.timing.targetOn) ||
      compareText(a.shortage.demand.id, b.shortage.demand.id),
  );
  if (!first) throw new Error('a group of choices holds at least one');
  const { protocol, plant, container, sownInto, wish, timing } = first;
  const days = batchDays(timing.schedule, sownInto?.id === container.id);
  const wantedUntil = latestOf(timing.readyOn, ...choices.map((choice) => choice.timing.targetOn));
  const wanted = choices.map(({ shortage }) => shortage).sort(byWorth);
  return {
    key,
    item: planItem(first.shortage.demand),
    protocol,
    plant,
    container,
    sownInto,
    wish,
    timing: { ...timing, targetOn: earliestOf(...choices.map((choice) => choice.timing.targetOn)) },
    days,
    wantedUntil,
    wanted,
    wantedUnits: wanted.reduce((sum, { units }) => sum + units, 0),
    success: successOf(protocol.passing),
    pottedShare: shareAtPotting(protocol),
    potLife: plannedPotLife({
      protocol,
      days,
      startOn: timing.startOn,
      startContainer: sownInto,
      container,
      plant,
      seasons,
      wantedUntil,
    }),
  };
}

/** Batches to start, in the order of their first days: what begins in one week for one item is one batch. */
export function draftStarts(choices: readonly Choice[], facts: Pick<ChoiceFacts, 'seasons'>): StartDraft[] {
  const groups = new Map<string, Choice[]>();
  for (const choice of choices) {
    const key = keyOf(choice);
    groups.set(key, [...(groups.get(key) ?? []), choice]);
  }
  return [...groups]
    .map(([key, group]) => draftOf(key, group, facts))
    .sort((a, b) => compareText(a.timing.startOn, b.timing.startOn) || compareText(a.key, b.key));
}
