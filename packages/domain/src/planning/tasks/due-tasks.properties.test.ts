import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CalendarDate } from '../../kernel/dates.ts';
import { STAGE_KINDS, type StagePlan } from '../../propagation/protocol/stages.ts';
import { dueTasks } from './due-tasks.ts';
import type { TaskBatch, TaskFacts, TaskLot, TaskOrder, TaskPlace, TaskPlanting } from './facts.ts';
import { isTaskKey } from './key.ts';

const TODAY = '2028-02-28';
const day = fc.integer({ min: -500, max: 500 }).map((days) => addDays(TODAY, days));
const past = fc.integer({ min: -500, max: 0 }).map((days) => addDays(TODAY, days));
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: null });
const monthDay = fc.constantFrom('01-01', '02-28', '02-29', '03-01', '06-10', '11-15', '12-31');
const dormantMonths = fc.constantFrom<number[]>([], [1, 2, 3, 10, 11, 12], [6, 7]);
const placeIds = fc.subarray(['p1', 'p2', 'p3']);
const ids = fc.nat(999_999);

const stages = fc.subarray([...STAGE_KINDS], { minLength: 1 }).chain((kinds) =>
  fc.tuple(
    ...kinds.map((kind) =>
      fc.tuple(fc.nat(60), fc.nat(60), fc.boolean()).map(([shortDays, more, rests]): StagePlan => ({
        kind,
        shortDays,
        usualDays: shortDays + more,
        longDays: shortDays + 2 * more,
        share: 1,
        season: more > 50 ? { fromMd: '11-01', toMd: '02-29' } : null,
        rests,
      })),
    ),
  ),
);

const standing = fc.record({ id: ids, placeIds, units: fc.nat(500), dormantMonths, plantByOn: maybe(day) });
const batches: fc.Arbitrary<TaskBatch> = fc
  .tuple(
    standing,
    stages,
    past,
    fc.nat(9),
    maybe(past),
    maybe(past),
    fc.constantFrom('seed' as const, 'cutting' as const),
  )
  .map(([about, plan, startedOn, at, secondWinterOn, counted, method]) => ({
    ...about,
    id: `b${about.id}`,
    code: `B-${about.id}`,
    plantName: 'Zizia aurea',
    method,
    unit: 'cell',
    startedOn,
    stages: plan,
    stage: { position: at % plan.length, begunOn: startedOn },
    secondWinterOn,
    lastCount: counted === null ? null : { on: counted, units: 3 },
  }));
const lots: fc.Arbitrary<TaskLot> = fc
  .tuple(standing, stages, past, maybe(day), fc.boolean(), maybe(past))
  .map(([about, plan, pottedOn, readyOn, rootChecked, lookedAtOn]) => ({
    ...about,
    id: `l${about.id}`,
    code: `L-${about.id}`,
    plantName: 'Zizia aurea',
    pottedOn,
    stages: plan,
    readyOn,
    rootChecked,
    lookedAtOn,
  }));
const places: fc.Arbitrary<TaskPlace> = fc
  .tuple(ids, maybe(monthDay), maybe(monthDay), maybe(monthDay))
  .map(([id, coverMd, baitMd, uncoverMd]) => ({ id: `p${id}`, code: `P${id}`, coverMd, baitMd, uncoverMd }));
const orders: fc.Arbitrary<TaskOrder> = fc
  .tuple(ids, day, fc.nat(9), fc.nat(9), placeIds)
  .map(([id, dueOn, toPullUnits, stagedUnits, at]) => ({
    id: `o${id}`,
    code: `O-${id}`,
    kind: 'installation',
    dueOn,
    toPullUnits,
    stagedUnits,
    placeIds: at,
  }));
const plantings: fc.Arbitrary<TaskPlanting> = fc
  .tuple(ids, past, fc.array(fc.tuple(dormantMonths, maybe(monthDay)), { minLength: 1, maxLength: 3 }))
  .map(([id, plantedOn, plants]) => ({
    orderId: `g${id}`,
    orderCode: `G-${id}`,
    plantedOn,
    units: 5,
    plants: plants.map(([months, lastEmergenceMd], at) => ({
      name: `Plant ${at}`,
      dormantMonths: months,
      lastEmergenceMd,
    })),
  }));

const oneOfEach = <Row extends { id?: string; orderId?: string }>(rows: fc.Arbitrary<Row>) =>
  fc.uniqueArray(rows, { maxLength: 4, selector: (row) => row.id ?? row.orderId });
const facts: fc.Arbitrary<TaskFacts> = fc
  .record({
    batches: oneOfEach(batches),
    lots: oneOfEach(lots),
    places: oneOfEach(places),
    orders: oneOfEach(orders),
    plantings: oneOfEach(plantings),
  })
  .map((rows) => ({ today: TODAY, noticeDays: 45, springCounts: [], tests: [], ticks: [], ...rows }));
const window = fc
  .tuple(day, fc.nat(400))
  .map(([from, days]): [CalendarDate, CalendarDate] => [from, addDays(from, days)]);
const keysOf = (tasks: readonly { key: string }[]) => tasks.map(({ key }) => key);

describe('tasks of any nursery', () => {
  it('have names of their own, in the form of names', () => {
    fc.assert(
      fc.property(facts, window, (given, [from, until]) => {
        const keys = keysOf(dueTasks(given, from, until));
        expect(new Set(keys).size).toBe(keys.length);
        expect(keys.filter((key) => !isTaskKey(key))).toEqual([]);
      }),
    );
  });

  it('do not depend on the order of what they are reckoned from', () => {
    const turned = <Row>(rows: readonly Row[]) => [...rows].reverse();
    fc.assert(
      fc.property(facts, window, (given, [from, until]) => {
        const other = {
          ...given,
          batches: turned(given.batches),
          lots: turned(given.lots),
          places: turned(given.places),
          orders: turned(given.orders),
          plantings: turned(given.plantings),
        };
        expect(dueTasks(other, from, until)).toEqual(dueTasks(given, from, until));
      }),
    );
  });

  it('keep name and day in whatever days they are asked for', () => {
    fc.assert(
      fc.property(facts, window, fc.nat(200), (given, [from, until], more) => {
        const wide = new Map(
          dueTasks(given, TODAY, addDays(until > TODAY ? until : TODAY, more)).map((task) => [task.key, task.dueOn]),
        );
        for (const task of dueTasks(given, from, until))
          if (task.dueOn >= TODAY) expect(wide.get(task.key)).toBe(task.dueOn);
      }),
    );
  });

  it('stand in the order of their days, none after the last, and are never due before they can have begun', () => {
    fc.assert(
      fc.property(facts, window, (given, [from, until]) => {
        const tasks = dueTasks(given, from, until);
        expect(tasks.map(({ dueOn }) => dueOn)).toEqual(tasks.map(({ dueOn }) => dueOn).sort());
        expect(tasks.filter(({ dueOn }) => dueOn > until)).toEqual([]);
      }),
    );
  });

  it('are told once on the day and once after, with the same name, until they are done', () => {
    fc.assert(
      fc.property(facts, (given) => {
        const today = new Set(keysOf(dueTasks(given, TODAY, TODAY)));
        const tomorrow = new Set(
          keysOf(dueTasks({ ...given, today: addDays(TODAY, 1) }, addDays(TODAY, 1), addDays(TODAY, 500))),
        );
        const lapsed = (key: string) => /^(cover|vole-bait|uncover|follow-up)\//.test(key);
        expect([...today].filter((key) => !tomorrow.has(key) && !lapsed(key))).toEqual([]);
      }),
    );
  });

  it('that are ticked are open no more, and those alone', () => {
    fc.assert(
      fc.property(facts, (given) => {
        const before = dueTasks(given, TODAY, addDays(TODAY, 300));
        const ticks = before.filter(({ endsBy }) => endsBy === 'tick').map(({ key }) => ({ key, doneOn: TODAY }));
        const after = dueTasks({ ...given, ticks }, TODAY, addDays(TODAY, 300));
        expect(keysOf(after)).toEqual(keysOf(before));
        expect(after.filter(({ doneOn }) => doneOn === null)).toEqual(before.filter(({ endsBy }) => endsBy !== 'tick'));
      }),
    );
  });
});
