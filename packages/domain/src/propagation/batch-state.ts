import type { CalendarDate } from '../kernel/dates.ts';
import type { EntryKind } from '../stock/ledger-words.ts';
import { batchClocks, type FirstAlive } from './batch-clocks.ts';
import { type CurrentStage, currentStage } from './batch-stages.ts';
import type { LeftSinceCount } from './counting.ts';
import { yieldLeft } from './forecast.ts';
import type { ProtocolPlan } from './protocol/stages.ts';
import { type StageEvidence, stageBeginnings } from './stage-beginnings.ts';
import type { BatchKind } from './words.ts';

/** What somebody expects of a batch: the container its plants are meant for, a cautious and a usual number of plants, the day they are ready. */
export interface BatchForecast {
  targetContainerId: string | null;
  cautiousUnits: number;
  usualUnits: number;
  readyOn: CalendarDate | null;
}

/** A forecast as an entry keeps it. Entries from before there was a usual yield have none: theirs is the cautious one. */
export type WrittenForecast = Omit<BatchForecast, 'usualUnits'> & { usualUnits?: number };

/** One entry of a batch that stands, that is, has not been reversed. Units in the batch's own unit, plants in plants. */
export interface BatchEntry extends StageEvidence {
  entryId: string;
  /** The order in which entries were written down, which need not be that of their days. */
  version: number;
  kind: EntryKind;
  cause: string | null;
  /** Units that left the batch for a lot or for the outside; moves from place to place are not among them. */
  unitsOut: number;
  unitsIn: number;
  forecast: WrittenForecast | null;
  firstAlive: FirstAlive | null;
  isSecondWinter: boolean;
}

/** What follows from a batch's entries; all of it is derived, so that reversing an entry needs no undoing of its own. */
export interface BatchState {
  emergedUnits: number | null;
  emergedOn: CalendarDate | null;
  confinedOn: CalendarDate | null;
  containerOn: CalendarDate | null;
  /** Null where no entry says anything of it: what is stored then stays. */
  forecast: BatchForecast | null;
  /** Where it is in its protocol; null without a protocol. */
  stage: CurrentStage | null;
  secondWinterOn: CalendarDate | null;
  closedOn: CalendarDate | null;
}

const byDay = (a: BatchEntry, b: BatchEntry) =>
  a.happenedOn === b.happenedOn ? a.version - b.version : a.happenedOn < b.happenedOn ? -1 : 1;
const lastOf = <Item>(items: readonly Item[]): Item | null => items[items.length - 1] ?? null;
const isCount = (entry: BatchEntry): entry is BatchEntry & { emergedUnits: number } => entry.emergedUnits !== null;

/** Counts in the order of their days, those of one day in the order in which they were written down. */
export const countsOf = (entries: readonly BatchEntry[]) => entries.filter(isCount).sort(byDay);

/** The earliest day on which anything of the batch is known to have come up or rooted, or null. */
export function firstAliveOf(entries: readonly BatchEntry[]): FirstAlive | null {
  const known = entries.flatMap((entry) => [
    ...(isCount(entry) && entry.emergedUnits > 0 ? [{ on: entry.happenedOn, assumed: false }] : []),
    ...(entry.firstAlive ? [entry.firstAlive] : []),
  ]);
  return known.reduce<FirstAlive | null>((first, next) => (first === null || next.on < first.on ? next : first), null);
}

/** What left the batch after a count was written down, on days up to `on`. */
export function leftSince(entries: readonly BatchEntry[], version: number, on: CalendarDate): LeftSinceCount {
  const later = entries.filter((entry) => entry.version > version && entry.happenedOn <= on);
  const sum = (kept: BatchEntry[], of: 'unitsOut' | 'pottedPlants') =>
    kept.reduce((total, entry) => total + entry[of], 0);
  const pots = later.filter((entry) => entry.kind === 'pot');
  // Packs that another batch was drawn from take their share of the plants along, as lost ones do.
  const losses = later.filter((entry) => entry.kind === 'lose' || entry.kind === 'close' || entry.kind === 'convert');
  return {
    pottedUnits: sum(pots, 'unitsOut'),
    pottedPlants: sum(pots, 'pottedPlants'),
    failedUnits: sum(
      losses.filter((entry) => entry.cause === 'failed'),
      'unitsOut',
    ),
    lostUnits: sum(
      losses.filter((entry) => entry.cause !== 'failed'),
      'unitsOut',
    ),
  };
}

/** Units that stood at the end of a day: what stands now, less what came and plus what went on later days. Never below zero. */
export function standingOn(entries: readonly BatchEntry[], standingUnits: number, on: CalendarDate): number {
  const later = entries.filter((entry) => entry.happenedOn > on);
  return Math.max(
    0,
    later.reduce((units, entry) => units + entry.unitsOut - entry.unitsIn, standingUnits),
  );
}

function forecastOf(batch: BatchKind, entries: readonly BatchEntry[], standingUnits: number): BatchForecast | null {
  const base = lastOf(entries.filter((entry) => entry.forecast !== null));
  if (base?.forecast == null) return null;
  const pottedPlants = entries.reduce(
    (plants, entry) => (entry.version > base.version ? plants + entry.pottedPlants : plants),
    0,
  );
  const left = (expectedUnits: number) => yieldLeft({ unit: batch.unit, expectedUnits, pottedPlants, standingUnits });
  const { cautiousUnits, usualUnits = cautiousUnits } = base.forecast;
  return { ...base.forecast, cautiousUnits: left(cautiousUnits), usualUnits: left(usualUnits) };
}

/** A batch is over when it was closed, or when the last of it has left. */
function closedOnOf(batch: BatchKind, entries: readonly BatchEntry[], standingUnits: number): CalendarDate | null {
  const closing = lastOf(entries.filter((entry) => entry.kind === 'close'));
  if (closing) return closing.happenedOn;
  if (standingUnits > 0) return null;
  return lastOf(entries.filter((entry) => entry.unitsOut > 0).sort(byDay))?.happenedOn ?? batch.startedOn;
}

/**
 * The state of a batch from the entries that stand, in the order they were written down, the units that stand, and the protocol it was started
 * under, if any. Throws InputError for a day that does not exist.
 */
export function batchState(
  batch: BatchKind,
  written: readonly BatchEntry[],
  standingUnits: number,
  plan: ProtocolPlan | null = null,
): BatchState {
  const entries = [...written].sort((a, b) => a.version - b.version);
  const count = lastOf(countsOf(entries));
  const { confinedOn, containerOn } = batchClocks(batch, firstAliveOf(entries));
  const secondWinterOn = lastOf(entries.filter((entry) => entry.isSecondWinter))?.happenedOn ?? null;
  return {
    emergedUnits: count?.emergedUnits ?? null,
    emergedOn: count?.happenedOn ?? null,
    confinedOn,
    containerOn,
    forecast: forecastOf(batch, entries, standingUnits),
    stage: plan && currentStage(plan, batch.startedOn, stageBeginnings(plan, entries), secondWinterOn),
    secondWinterOn,
    closedOn: closedOnOf(batch, entries, standingUnits),
  };
}
