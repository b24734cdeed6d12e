import { propagation } from '@rootclock/contracts';
import { type BatchKind, countsOf, daysBetween, EVERYONE, expectedAlive, type FirstAlive, firstAliveOf, isDormant, leftSince, type PotBand, potBand, startsWithFirstAlive } from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { query } from '../../../../trpc/operation.ts';
import { loadBatchEntries } from '../history/store.ts';
import {
  type BatchHead, type BatchReservation, type BatchStoryEntry, type BatchTreatment, type PottedLot, readBatchHead, readBatchReservations, readBatchStory, readBatchTreatments, readPottedLots,
} from './reads.ts';

export interface BatchPage extends Omit<BatchHead, 'noticeDays'> {
  standingUnits: number;
  /** Plants (of cells: cells with plants) that should live now: the last count less what was potted and lost since. Null before the first count. */
  aliveUnits: number | null;
  /** When the first came up or rooted. */
  firstAlive: FirstAlive | null;
  /** Whether potting needs to know when the first came up or rooted. */
  needsFirstAlive: boolean;
  daysSinceStart: number;
  daysSinceConfined: number | null;
  band: PotBand;
  daysLeft: number | null;
  dormantNow: boolean;
  /** Counts that stand, by day: the course of emergence or rooting. */
  course: { on: string; emergedUnits: number }[];
  story: BatchStoryEntry[];
  lots: PottedLot[];
  treatments: BatchTreatment[];
  reservations: BatchReservation[];
}

export const readBatch = query({
  name: 'readBatch',
  input: propagation.readBatch,
  roles: EVERYONE,
  read: async (context, { batchId }): Promise<BatchPage> => {
    const { noticeDays, ...head } = found(await readBatchHead(context, batchId), 'batch', 'batchId');
    const entries = await loadBatchEntries(context, batchId);
    const kind: BatchKind = { method: head.method, unit: head.unit, containerKind: head.containerKind, startedOn: head.startedOn };
    const { today } = context;
    const standingUnits = head.places.reduce((units, place) => units + place.units, 0);
    const counts = countsOf(entries);
    const last = counts.at(-1);
    return {
      ...head,
      standingUnits,
      aliveUnits: last ? expectedAlive({ unit: head.unit, lastCounted: last.emergedUnits, since: leftSince(entries, last.version, today), standingUnits }) : null,
      firstAlive: firstAliveOf(entries),
      needsFirstAlive: startsWithFirstAlive(kind),
      daysSinceStart: daysBetween(head.startedOn, today),
      daysSinceConfined: head.confinedOn ? daysBetween(head.confinedOn, today) : null,
      ...potBand(head.closedOn ? null : head.plantByOn, today, noticeDays),
      dormantNow: isDormant(head.dormantMonths, today),
      course: counts.map((entry) => ({ on: entry.happenedOn, emergedUnits: entry.emergedUnits })),
      story: await readBatchStory(context, batchId),
      lots: await readPottedLots(context, batchId),
      treatments: await readBatchTreatments(context, batchId),
      reservations: await readBatchReservations(context, batchId),
    };
  },
});
