/** What a task is called, and where it is done: each leads to the very page or sheet on which its entry is made. */
import type { planning } from '@rootclock/contracts';
import { paths } from '../../../lib/paths.ts';
import { messages } from '../../../messages/index.ts';

export type TaskRow = planning.TaskRow;

export function titleOf({ kind, subject, units, unit, details }: TaskRow): string {
  const { tasks } = messages();
  if (kind === 'leave-the-pot' && unit !== 'plant') return tasks.cells(subject.code);
  return tasks.titleOf[kind](subject.code, units ?? 0, details);
}

interface Way {
  to: string;
  /** The sheet that opens there. */
  search?: { do: string };
}

const PAGE_OF: Record<TaskRow['subject']['kind'], (id: string) => string> = {
  batch: paths.batch,
  lot: paths.lot,
  place: paths.place,
  order: paths.order,
  source: paths.source,
};
const SHEET_OF: Partial<Record<TaskRow['kind'], string>> = {
  count: 'count',
  'prick-out': 'pot',
  pot: 'pot',
  'check-root-ball': 'rootBall',
  'ask-not-yet-up': 'spring',
};
const OWN_PAGE: Partial<Record<TaskRow['kind'], (id: string) => string>> = {
  pull: paths.pullList,
  'plant-out': paths.planting,
  'hand-over': paths.handOver,
};

export function wayTo({ kind, subject }: TaskRow): Way {
  const sheet = SHEET_OF[kind];
  return { to: (OWN_PAGE[kind] ?? PAGE_OF[subject.kind])(subject.id), ...(sheet ? { search: { do: sheet } } : {}) };
}
