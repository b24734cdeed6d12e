// How listening begins and ends, whatever comes first: the loop alone, with a connection that does what it is told.
import { beforeEach, expect, it } from 'vitest';
import { Changes } from '../../../apps/server/src/db/changes/changes.ts';
import type { Standing } from '../../../apps/server/src/db/changes/listener.ts';

const nursery = '6b1f3c1e-0000-4000-8000-000000000001';

let told: number[];
let changes: Changes;
let hear: (payload: string) => void;
let answer: (standings: Standing[]) => void;
let asked: number;

/** A loop that asks on for ever would starve the test itself, so after this many questions the connection is gone. */
const MOST_ASKED = 50;

beforeEach(() => {
  told = [];
  asked = 0;
  changes = new Changes({
    open: (heard) => {
      hear = heard;
      let cut: (reason: Error) => void = () => {};
      const listening = new Promise<Standing[]>((resolve) => (answer = resolve));
      const gone = new Promise<Error>((resolve) => (cut = resolve));
      return {
        listening,
        gone,
        check: async () => {
          asked += 1;
          if (asked > MOST_ASKED) throw new Error('asked on and on');
        },
        cut,
      };
    },
    after: () => () => {},
    chance: () => 0,
    stands: (standings) => told.push(...standings.map(({ version }) => version)),
    changed: ({ version }) => told.push(version),
    sessionEnded: () => {},
    lost: () => {},
    odd: () => {},
  });
});

it('a change that was heard while listening began is told after how far the nursery was then', async () => {
  const started = changes.start();
  // The driver hands on what was notified while a statement ran before it hands on the statement's own answer.
  hear(JSON.stringify({ nursery, version: 5, features: ['stock'] }));
  answer([{ nursery, version: 4 }]);
  await started;
  expect(told).toEqual([4, 5]);
  await changes.stop();
});

it('listening ends when it is stopped, also where the connection answers every question at once', async () => {
  const started = changes.start();
  answer([{ nursery, version: 4 }]);
  await started;
  await changes.stop();
  expect(asked).toBeLessThanOrEqual(1);
});
