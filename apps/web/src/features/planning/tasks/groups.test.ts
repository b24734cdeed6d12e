import { describe, expect, it } from 'vitest';
import { groupTasks } from './groups.ts';
import type { TaskRow } from './task-words.ts';

const row = (key: string, dueOn: string, code: string | null, more: Partial<TaskRow> = {}): TaskRow => ({
  key,
  kind: 'cover',
  dueOn,
  lateOn: null,
  endsBy: 'tick',
  earliestOn: dueOn,
  doneOn: null,
  subject: { kind: 'place', id: key, code: key },
  plantName: null,
  units: null,
  unit: null,
  details: {},
  places: code === null ? [] : [{ placeId: code, code, name: code }],
  isOverdue: false,
  isLate: false,
  doneBy: null,
  ...more,
});
const told = (rows: TaskRow[]) =>
  groupTasks(rows).map(
    ({ key, places }) =>
      `${key}: ${places.map((at) => `${at.place?.code ?? '-'} ${at.rows.map((each) => each.key).join(' ')}`).join(', ')}`,
  );

describe('tasks in groups', () => {
  it('are what is overdue, then days, each place together', () => {
    expect(
      told([
        row('a', '2026-05-01', 'B1', { isOverdue: true }),
        row('b', '2026-05-02', 'B2', { isOverdue: true }),
        row('c', '2026-05-03', 'B1', { isOverdue: true }),
        row('d', '2026-05-20', 'B1'),
        row('e', '2026-05-20', null),
      ]),
    ).toEqual(['overdue: B1 a c, B2 b', '2026-05-20: B1 d, - e']);
  });
  it('have what is done at the end, whatever its day', () => {
    expect(told([row('a', '2026-05-01', 'B1', { doneOn: '2026-05-20' }), row('b', '2026-05-21', 'B1')])).toEqual([
      '2026-05-21: B1 b',
      'done: B1 a',
    ]);
  });
  it('are none where there are none', () => {
    expect(groupTasks([])).toEqual([]);
  });
});
