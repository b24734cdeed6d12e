import { propagation } from '@rootclock/contracts';
import {
  type BatchKind,
  countsOf,
  daysBetween,
  EVERYONE,
  expectedAlive,
  type FirstAlive,
  firstAliveOf,
  isDormant,
  leftSince,
  type PotBand,
  potBand,
  startsWithFirstAlive,
} from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { query } from '../../../../trpc/operation.ts';
import { type BatchTreatment, readBatchTreatments } from '../../../stock/treatments/reads.ts';
import { loadBatchEntries } from '../history/store.ts';
import { type BatchProtocol, readBatchProtocol } from './batch-stages.ts';
import { type EarlierCourse, readEarlierCourses } from './course-reads.ts';
import { type CourseFigures, courseFigures } from './course.ts';
import { type DrawnBatch, type PottedLot, readDrawnBatches, readPottedLots } from './descendants-reads.ts';
import { type BatchHead, readBatchHead } from './head-reads.ts';
import { type BatchReservation, readBatchReservations } from './reservations-reads.ts';
import { type BatchStoryEntry, readBatchStory } from './story-reads.ts';

export interface BatchPage extends Omit<BatchHead, 'noticeDays' | 'protocolVersionId'> {
  /** The protocol it keeps, with its stages; null without one. */
  protocol: BatchProtocol | null;
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
  figures: CourseFigures | null;
  /** Earlier batches of the same plant and method, the latest first. */
  earlier: EarlierCourse[];
  /** Batches whose seed was drawn from these packs. */
  drawn: DrawnBatch[];
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
    const { noticeDays, protocolVersionId, ...head } = found(await readBatchHead(context, batchId), 'batch', 'batchId');
    const entries = await loadBatchEntries(context, batchId);
    const kind: BatchKind = {
      method: head.method,
      unit: head.unit,
      containerKind: head.containerKind,
      startedOn: head.startedOn,
    };
    const { today } = context;
    const standingUnits = head.places.reduce((units, place) => units + place.units, 0);
    const counts = countsOf(entries);
    const last = counts.at(-1);
    const course = counts.map((entry) => ({ on: entry.happenedOn, emergedUnits: entry.emergedUnits }));
    return {
      ...head,
      protocol: await readBatchProtocol(
        context,
        { protocolVersionId, startedOn: head.startedOn, secondWinterOn: head.secondWinterOn },
        entries,
      ),
      standingUnits,
      aliveUnits: last
        ? expectedAlive({
            unit: head.unit,
            lastCounted: last.emergedUnits,
            since: leftSince(entries, last.version, today),
            standingUnits,
          })
        : null,
      firstAlive: firstAliveOf(entries),
      needsFirstAlive: startsWithFirstAlive(kind),
      daysSinceStart: daysBetween(head.startedOn, today),
      daysSinceConfined: head.confinedOn ? daysBetween(head.confinedOn, today) : null,
      ...potBand(head.closedOn ? null : head.plantByOn, today, noticeDays),
      dormantNow: isDormant(head.dormantMonths, today),
      course,
      figures: courseFigures({ ...head, course }),
      earlier: await readEarlierCourses(context, batchId),
      drawn: head.unit === 'pack' ? await readDrawnBatches(context, batchId) : [],
      story: await readBatchStory(context, batchId),
      lots: await readPottedLots(context, batchId),
      treatments: await readBatchTreatments(context, batchId),
      reservations: await readBatchReservations(context, batchId),
    };
  },
});
