import { addDays, type CalendarDate, latestOf, requireDate } from '../kernel/dates.ts';
import { type Clocks, clocksAfter } from '../pot-life/clocks/clocks-after.ts';
import { type ConfinedFromInput, confinedFrom } from '../pot-life/clocks/confined-from.ts';
import type { ContainerKind } from '../stock/ledger-words.ts';
import type { BatchKind } from './words.ts';

/** A day on which the batch was first seen alive: first emergence or first rooted. `assumed` when it is known only roughly. */
export interface FirstAlive {
  on: CalendarDate;
  assumed: boolean;
}

/** Whether roots stand free of each other's company in this batch: in cells, or as pieces in pots of their own. */
const isInCells = ({ unit, containerKind }: BatchKind) =>
  containerKind === 'tray' || containerKind === 'pot' || unit === 'cell';

const isCutting = ({ method }: BatchKind) => method === 'cutting' || method === 'root-cutting';

/**
 * Whether the confined clock of what comes out of this batch starts with its first emergence or rooting, so that the day
 * has to be known when the first of it is potted. Not so for open flats, packs and loose divisions: potting starts theirs.
 */
export function startsWithFirstAlive(batch: BatchKind): boolean {
  return isCutting(batch) || (batch.method === 'seed' && isInCells(batch));
}

function originOf(
  batch: BatchKind,
  firstAliveOn: CalendarDate | null,
  pottedOn: CalendarDate | null,
): ConfinedFromInput {
  if (isCutting(batch)) return { kind: 'cutting', firstRootedOn: firstAliveOn };
  if (batch.method === 'seed')
    return isInCells(batch)
      ? { kind: 'cell-sown', firstEmergedOn: firstAliveOn }
      : { kind: 'flat', prickedOutOn: pottedOn };
  // A division set into a cell or pot of its own was potted that day.
  return { kind: 'division', pottedOn: isInCells(batch) ? batch.startedOn : pottedOn };
}

/**
 * The clocks of what stands in a batch. Confined: first emergence in cells and never sowing, first rooting of cuttings, the start of
 * divisions set into cells; null in open flats and packs, where pricking out starts it. Container: since plants stand in it, which for
 * seed is first emergence as well, for pieces the start; null without a container. Throws InputError for a day that does not exist.
 */
export function batchClocks(batch: BatchKind, firstAlive: FirstAlive | null): Clocks {
  const { confinedOn } = confinedFrom(originOf(batch, firstAlive?.on ?? null, null));
  const standsSince = batch.method === 'seed' ? (firstAlive?.on ?? null) : requireDate('startedOn', batch.startedOn);
  return {
    confinedOn,
    containerOn: batch.containerKind === null ? null : standsSince,
    assumed: firstAlive?.assumed ?? false,
  };
}

/**
 * The clocks of a lot potted from a batch on a day. Planted in the ground of a nursery bed it has none.
 * Throws InputError for a day that does not exist.
 */
export function pottedClocks(
  batch: BatchKind,
  firstAlive: FirstAlive | null,
  into: ContainerKind,
  on: CalendarDate,
): Clocks {
  if (into === 'ground') return clocksAfter({ kind: 'plant-in-ground' });
  const { confinedOn } = confinedFrom(originOf(batch, firstAlive?.on ?? null, on));
  const assumed = startsWithFirstAlive(batch) && (firstAlive?.assumed ?? false);
  return clocksAfter({ kind: 'pot', confinedOn, assumed, on });
}

/** The last day on which plants may still be potted into a lot that was begun on `pottedOn`. */
export const lastPottingDay = (pottedOn: CalendarDate, pottingDays: number): CalendarDate =>
  addDays(pottedOn, pottingDays);

/** A remembered day of first emergence or rooting, never before the batch began. */
export const notBeforeStart = (on: CalendarDate, startedOn: CalendarDate): CalendarDate => latestOf(on, startedOn);
