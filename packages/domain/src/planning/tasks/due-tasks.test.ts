import { describe, expect, it } from 'vitest';
import type { StagePlan } from '../../propagation/protocol/stages.ts';
import { dueTasks } from './due-tasks.ts';
import type { TaskBatch, TaskFacts, TaskLot } from './facts.ts';

const TODAY = '2027-04-20';
const stage = (kind: StagePlan['kind'], usualDays: number, more: Partial<StagePlan> = {}): StagePlan => ({
  kind,
  shortDays: usualDays,
  usualDays,
  longDays: usualDays * 2,
  share: 1,
  season: null,
  rests: false,
  ...more,
});
const MILKWEED = [
  stage('stratification', 30),
  stage('sowing', 0),
  stage('emergence', 14),
  stage('pricking-out', 21),
  stage('growing-on', 60),
  stage('hardening', 10),
  stage('root-check', 3),
  stage('ready', 0),
];

const batch = (more: Partial<TaskBatch> = {}): TaskBatch => ({
  id: 'b1',
  code: 'ASTU-27-001',
  plantName: 'Asclepias tuberosa',
  placeIds: ['bench'],
  units: 100,
  dormantMonths: [10, 11, 12, 1, 2, 3],
  plantByOn: null,
  method: 'seed',
  unit: 'cell',
  startedOn: '2027-03-01',
  stages: MILKWEED,
  stage: { position: 0, begunOn: '2027-03-25' },
  secondWinterOn: null,
  lastCount: null,
  ...more,
});
const lot = (more: Partial<TaskLot> = {}): TaskLot => ({
  id: 'l1',
  code: 'ASTU-27-002',
  plantName: 'Asclepias tuberosa',
  placeIds: ['yard'],
  units: 40,
  dormantMonths: [10, 11, 12, 1, 2, 3],
  plantByOn: null,
  pottedOn: '2027-04-10',
  stages: MILKWEED,
  readyOn: null,
  rootChecked: false,
  lookedAtOn: null,
  ...more,
});
const facts = (more: Partial<TaskFacts> = {}): TaskFacts => ({
  today: TODAY,
  noticeDays: 45,
  batches: [],
  lots: [],
  places: [],
  orders: [],
  plantings: [],
  springCounts: [],
  tests: [],
  ticks: [],
  ...more,
});

/** `kind day` of each task, which is what most tests are about. */
const told = (given: Partial<TaskFacts>, from = TODAY, until = '2028-04-20') =>
  dueTasks(facts(given), from, until).map(({ kind, dueOn }) => `${kind} ${dueOn}`);

describe('a batch', () => {
  it('comes out of the cold at the usual end of its stratification, and what follows is told ahead', () => {
    expect(told({ batches: [batch()] })).toEqual(['take-out-of-cold 2027-04-24', 'prick-out 2027-05-29']);
  });
  it('is late for it after the long end', () => {
    expect(dueTasks(facts({ batches: [batch()] }), TODAY, '2027-04-30')[0]).toMatchObject({
      lateOn: '2027-05-24',
      endsBy: 'stage',
      details: { next: 'sowing', nextPosition: 1 },
    });
  });
  it('is counted a week after its emergence began, and then a week after each count', () => {
    const emerging = batch({ stage: { position: 2, begunOn: '2027-04-16' } });
    expect(told({ batches: [emerging] }, TODAY, '2027-04-30')).toEqual(['count 2027-04-23']);
    expect(
      told({ batches: [{ ...emerging, lastCount: { on: '2027-04-20', units: 0 } }] }, TODAY, '2027-04-30'),
    ).toEqual(['count 2027-04-27']);
  });
  it('is not counted again before its season comes round, once it is kept for a second winter', () => {
    const kept = batch({
      stage: { position: 2, begunOn: '2026-04-16' },
      lastCount: { on: '2026-06-01', units: 0 },
      secondWinterOn: '2026-07-01',
    });
    expect(told({ batches: [kept], today: '2026-09-01' }, '2026-09-01', '2027-04-30')[0]).toBe('count 2027-04-16');
  });
  it('is pricked out at the end of that stage, and cuttings are potted', () => {
    const pricking = batch({ stage: { position: 3, begunOn: '2027-04-10' } });
    expect(told({ batches: [pricking] })).toEqual(['prick-out 2027-05-01']);
    expect(
      told({
        batches: [
          {
            ...pricking,
            method: 'cutting',
            stages: [stage('sticking', 0), stage('rooting', 20), stage('pricking-out', 5)],
            stage: { position: 1, begunOn: '2027-04-18' },
          },
        ],
      }),
    ).toEqual(['count 2027-04-25', 'pot 2027-05-13']);
  });
  it('is sown when scarification is over, and hardened where its plants stay in their cells', () => {
    const plugs = [
      stage('scarification', 1),
      stage('sowing', 0),
      stage('emergence', 10),
      stage('growing-on', 30),
      stage('hardening', 7),
    ];
    expect(told({ batches: [batch({ stages: plugs, stage: { position: 0, begunOn: TODAY } })] })).toEqual([
      'sow 2027-04-21',
      'harden 2027-05-31',
    ]);
  });
  it('is raised when it stays in a stage past its long end, and again a year on if it is kept', () => {
    const slow = batch({ stage: { position: 2, begunOn: '2027-03-01' }, lastCount: { on: TODAY, units: 0 } });
    expect(told({ batches: [slow] }, TODAY, TODAY)).toEqual(['stage-late 2027-03-30']);
    expect(told({ batches: [{ ...slow, secondWinterOn: TODAY }] }, TODAY, TODAY)).toEqual([]);
  });
  it('asks for nothing without a protocol', () => {
    expect(told({ batches: [batch({ stages: [], stage: null })] })).toEqual([]);
  });
});

describe('a lot', () => {
  it('is hardened and checked on the days its protocol gives after the potting', () => {
    expect(told({ lots: [lot()] })).toEqual(['harden 2027-06-09', 'check-root-ball 2027-06-19']);
  });
  it('is checked when somebody expects it to be ready, rather than by the protocol', () => {
    expect(told({ lots: [lot({ stages: [], readyOn: '2027-05-05' })] })).toEqual(['check-root-ball 2027-05-05']);
  });
  it('is looked at again a fortnight after a ball that did not hold', () => {
    expect(told({ lots: [lot({ stages: [], readyOn: '2027-04-10', lookedAtOn: '2027-04-19' })] })).toEqual([
      'check-root-ball 2027-05-03',
    ]);
  });
  it('is left alone once its root ball holds', () => {
    expect(told({ lots: [lot({ rootChecked: true })] })).toEqual([]);
  });
  it('must leave its pot within the notice, and stays on the list when it has not', () => {
    const leaving = lot({ rootChecked: true, plantByOn: '2027-06-04' });
    expect(told({ lots: [leaving] })).toEqual(['leave-the-pot 2027-06-04']);
    expect(told({ lots: [{ ...leaving, plantByOn: '2027-06-05' }] })).toEqual([]);
    expect(told({ lots: [{ ...leaving, plantByOn: '2027-03-01' }] })).toEqual(['leave-the-pot 2027-03-01']);
  });
  it('is asked about once its last plants may have come up, when some were not up at the spring count', () => {
    const count = {
      lotId: 'l1',
      code: 'ASTU-27-002',
      plantName: 'Asclepias tuberosa',
      placeId: 'yard',
      countedOn: '2027-04-18',
      notUpUnits: 6,
      untilOn: '2027-06-10',
    };
    expect(told({ springCounts: [count] })).toEqual(['ask-not-yet-up 2027-06-11']);
  });
});

describe('a place', () => {
  const house = { id: 'p1', code: 'H1', coverMd: '11-15', baitMd: '10-20', uncoverMd: '02-29' };
  it('is covered, baited and uncovered on its days, on 28 February where there is no leap day', () => {
    expect(told({ places: [house], today: '2027-06-01' }, '2027-06-01', '2028-03-31')).toEqual([
      'vole-bait 2027-10-20',
      'cover 2027-11-15',
      'uncover 2028-02-29',
    ]);
    expect(told({ places: [house], today: '2027-01-01' }, '2027-01-01', '2027-03-31')).toEqual([
      'cover 2026-11-15',
      'uncover 2027-02-28',
    ]);
  });
  it('is asked about for two months after its day', () => {
    expect(told({ places: [house], today: '2027-12-19' }, '2027-12-19', '2027-12-20')).toEqual([
      'vole-bait 2027-10-20',
      'cover 2027-11-15',
    ]);
    expect(told({ places: [house], today: '2027-12-20' }, '2027-12-20', '2027-12-20')).toEqual(['cover 2027-11-15']);
  });
  it('is done for the year when it is ticked, even if its day is moved afterwards', () => {
    const ticks = [{ key: 'cover/p1/2027', doneOn: '2027-11-10' }];
    const covered = { ...house, baitMd: null };
    expect(
      dueTasks(
        facts({ places: [{ ...covered, coverMd: '11-30' }], ticks, today: '2027-12-01' }),
        '2027-12-01',
        '2027-12-01',
      ),
    ).toEqual([]);
    expect(
      dueTasks(facts({ places: [covered], ticks, today: '2027-11-10' }), '2027-11-10', '2027-11-20'),
    ).toMatchObject([{ kind: 'cover', doneOn: '2027-11-10' }]);
  });
});

describe('an order', () => {
  const order = {
    id: 'o1',
    code: 'GO-27-001',
    kind: 'installation' as const,
    dueOn: '2027-05-12',
    toPullUnits: 30,
    stagedUnits: 0,
    placeIds: ['yard'],
  };
  it('is pulled and then planted on its day', () => {
    expect(told({ orders: [order] })).toEqual(['pull 2027-05-12', 'plant-out 2027-05-12']);
  });
  it('is only planted, or handed over, once all is pulled', () => {
    expect(told({ orders: [{ ...order, toPullUnits: 0, stagedUnits: 30 }] })).toEqual(['plant-out 2027-05-12']);
    expect(told({ orders: [{ ...order, kind: 'pickup', toPullUnits: 0, stagedUnits: 30 }] })).toEqual([
      'hand-over 2027-05-12',
    ]);
  });
  it('asks for nothing where there is nothing to fetch', () => {
    expect(told({ orders: [{ ...order, toPullUnits: 0 }] })).toEqual([]);
  });
});

describe('a planting', () => {
  const milkweed = { name: 'Asclepias tuberosa', dormantMonths: [10, 11, 12, 1, 2, 3, 4], lastEmergenceMd: '06-10' };
  const planting = { orderId: 'o1', orderCode: 'GO-27-001', plantedOn: '2027-05-12', units: 30, plants: [milkweed] };
  it('is looked at after thirty days', () => {
    expect(told({ plantings: [planting] })).toEqual(['follow-up 2027-06-11']);
  });
  it('made in autumn is looked at after the last-emergence day, since thirty days on it looks dead and is not', () => {
    const autumn = {
      ...planting,
      plantedOn: '2027-09-20',
      plants: [milkweed, { name: 'Carex vulpinoidea', dormantMonths: [], lastEmergenceMd: null }],
    };
    expect(dueTasks(facts({ plantings: [autumn], today: '2027-09-21' }), '2027-09-21', '2028-12-31')).toMatchObject([
      { dueOn: '2028-06-10', details: { dormant: ['Asclepias tuberosa'] } },
    ]);
  });
  it('is not asked about for ever', () => {
    expect(told({ plantings: [planting], today: '2027-10-10' }, '2027-10-10', '2027-10-10')).toEqual([]);
  });
});

describe('the list', () => {
  it('holds a test that is to be repeated until it is ticked', () => {
    const test = { sourceId: 's1', sourceCode: 'ASTU-26-009', plantName: 'Asclepias tuberosa', testedOn: '2027-02-01' };
    expect(told({ tests: [test] })).toEqual(['test-to-repeat 2027-02-01']);
    expect(told({ tests: [test], ticks: [{ key: 'test-to-repeat/s1/2027-02-01', doneOn: '2027-03-01' }] })).toEqual([]);
  });
  it('takes no tick for what an entry ends', () => {
    expect(
      dueTasks(
        facts({
          lots: [lot({ stages: [], readyOn: '2027-04-01' })],
          ticks: [{ key: 'check-root-ball/l1/2027-04-10', doneOn: TODAY }],
        }),
        TODAY,
        TODAY,
      ),
    ).toMatchObject([{ doneOn: null }]);
  });
  it('leaves out what is overdue where it begins after today', () => {
    expect(told({ lots: [lot({ stages: [], readyOn: '2027-04-01' })] }, '2027-04-21', '2027-05-01')).toEqual([]);
  });
  it('is refused when its last day comes before its first', () => {
    expect(() => dueTasks(facts(), '2027-04-20', '2027-04-19')).toThrow(
      expect.objectContaining({ name: 'InputError', argument: 'until' }),
    );
  });
});
