import { describe, expect, it } from 'vitest';
import { type BatchEntry, batchState, leftSince, standingOn } from './batch-state.ts';
import type { ProtocolPlan } from './protocol/stages.ts';
import type { BatchKind } from './words.ts';

const cells: BatchKind = { method: 'seed', unit: 'cell', containerKind: 'tray', startedOn: '2026-03-01' };
const nothing = {
  cause: null,
  unitsOut: 0,
  unitsIn: 0,
  pottedPlants: 0,
  emergedUnits: null,
  stagePosition: null,
  forecast: null,
  firstAlive: null,
  isSecondWinter: false,
};
const entry = (
  version: number,
  kind: BatchEntry['kind'],
  happenedOn: string,
  more: Partial<BatchEntry> = {},
): BatchEntry => ({ ...nothing, entryId: `e${version}`, version, starts: kind === 'start', kind, happenedOn, ...more });

const start = entry(1, 'start', '2026-03-01', {
  unitsIn: 100,
  forecast: { targetContainerId: 'pot', cautiousUnits: 60, readyOn: '2026-06-15' },
});

describe('the state of a batch', () => {
  it('knows of no plants and runs no clock at its start', () => {
    expect(batchState(cells, [start], 100)).toMatchObject({
      emergedUnits: null,
      confinedOn: null,
      containerOn: null,
      closedOn: null,
    });
  });
  it('takes the last day that was counted, not the last that was written down', () => {
    const late = [
      start,
      entry(2, 'count', '2026-04-10', { emergedUnits: 70 }),
      entry(3, 'count', '2026-04-01', { emergedUnits: 12 }),
    ];
    expect(batchState(cells, late, 100)).toMatchObject({
      emergedUnits: 70,
      emergedOn: '2026-04-10',
      confinedOn: '2026-04-01',
    });
  });
  it('starts no clock with a count of none', () => {
    expect(batchState(cells, [start, entry(2, 'count', '2026-03-20', { emergedUnits: 0 })], 100).confinedOn).toBeNull();
  });
  it('promises less by what was potted, until somebody judges anew', () => {
    const potted = [start, entry(2, 'pot', '2026-05-01', { unitsOut: 20, pottedPlants: 22 })];
    expect(batchState(cells, potted, 80).forecast?.cautiousUnits).toBe(38);
    expect(
      batchState(
        cells,
        [
          ...potted,
          entry(3, 'observe', '2026-05-02', {
            forecast: { targetContainerId: 'pot', cautiousUnits: 50, readyOn: null },
          }),
        ],
        80,
      ).forecast?.cautiousUnits,
    ).toBe(50);
  });
  it('takes the cautious yield for the usual one where an old entry knew no other', () => {
    expect(batchState(cells, [start], 100).forecast).toMatchObject({ cautiousUnits: 60, usualUnits: 60 });
  });
  it('expects less in the usual case as well by what was potted', () => {
    const judged = entry(2, 'observe', '2026-04-20', {
      forecast: { targetContainerId: 'pot', cautiousUnits: 50, usualUnits: 70, readyOn: null },
    });
    expect(
      batchState(cells, [start, judged, entry(3, 'pot', '2026-05-01', { unitsOut: 20, pottedPlants: 20 })], 80)
        .forecast,
    ).toMatchObject({ cautiousUnits: 30, usualUnits: 50 });
  });
  it('knows no stage without a protocol', () => expect(batchState(cells, [start], 100).stage).toBeNull());
  it('is in the stage that its entries imply', () => {
    const plan: ProtocolPlan = {
      dormantMonths: [],
      stages: (['emergence', 'growing-on'] as const).map((kind) => ({
        kind,
        shortDays: 10,
        usualDays: 20,
        longDays: 30,
        share: 1,
        season: null,
        rests: false,
      })),
    };
    expect(batchState(cells, [start, entry(2, 'count', '2026-03-18', { emergedUnits: 4 })], 100, plan).stage).toEqual({
      position: 1,
      kind: 'growing-on',
      begunOn: '2026-03-18',
      dueOn: '2026-04-07',
      lateOn: '2026-04-17',
    });
  });
  it('is over when the last unit has left, on that day', () => {
    expect(
      batchState(cells, [start, entry(2, 'pot', '2026-05-01', { unitsOut: 100, pottedPlants: 90 })], 0).closedOn,
    ).toBe('2026-05-01');
  });
  it('is over when it was closed although nothing is written off', () => {
    expect(
      batchState(cells, [start, entry(2, 'close', '2026-05-03', { unitsOut: 5, cause: 'failed' })], 0).closedOn,
    ).toBe('2026-05-03');
  });
  it('stays open for its second winter', () => {
    expect(batchState(cells, [start, entry(2, 'observe', '2026-09-01', { isSecondWinter: true })], 100)).toMatchObject({
      secondWinterOn: '2026-09-01',
      closedOn: null,
    });
  });
});

it('takes packs that were drawn on as gone with their share of plants since a count', () => {
  const packs = [
    entry(2, 'count', '2026-04-01', { emergedUnits: 60 }),
    entry(3, 'convert', '2026-04-02', { unitsOut: 3 }),
  ];
  expect(leftSince(packs, 2, '2026-04-10')).toMatchObject({ lostUnits: 3, failedUnits: 0 });
});

it('tells failed cells from lost plants since a count', () => {
  const entries = [
    entry(2, 'count', '2026-04-01', { emergedUnits: 60 }),
    entry(3, 'lose', '2026-04-02', { unitsOut: 30, cause: 'failed' }),
    entry(4, 'lose', '2026-04-03', { unitsOut: 4, cause: 'rot' }),
    entry(5, 'lose', '2026-04-20', { unitsOut: 9, cause: 'rot' }),
  ];
  expect(leftSince(entries, 2, '2026-04-10')).toEqual({
    pottedUnits: 0,
    pottedPlants: 0,
    failedUnits: 30,
    lostUnits: 4,
  });
});

it('knows how many units stood on an earlier day', () => {
  const entries = [start, entry(2, 'pot', '2026-05-01', { unitsOut: 40, pottedPlants: 40 })];
  expect(standingOn(entries, 60, '2026-04-30')).toBe(100);
  expect(standingOn(entries, 60, '2026-05-01')).toBe(60);
});
