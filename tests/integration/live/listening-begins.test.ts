import { expect, it } from 'vitest';
import { Changes } from '../../../apps/server/src/db/changes/changes.ts';
import type { Standing } from '../../../apps/server/src/db/changes/listener.ts';

const nursery = '6b1f3c1e-0000-4000-8000-000000000001';

it('a change that was heard while listening began is told after how far the nursery was then', async () => {
  const told: number[] = [];
  let hear: (payload: string) => void = () => {};
  let answer: (standings: Standing[]) => void = () => {};
  let cut: (reason: Error) => void = () => {};
  const listening = new Promise<Standing[]>((resolve) => (answer = resolve));
  const gone = new Promise<Error>((resolve) => (cut = resolve));
  const changes = new Changes({
    open: (heard) => {
      hear = heard;
      return { listening, gone, check: () => Promise.resolve(), cut };
    },
    after: () => () => {},
    chance: () => 0,
    stands: (standings) => told.push(...standings.map(({ version }) => version)),
    changed: ({ version }) => told.push(version),
    sessionEnded: () => {},
    lost: () => {},
    odd: () => {},
  });
  const started = changes.start();
  // The driver hands on what was notified while a statement ran before it hands on the statement's own answer.
  hear(JSON.stringify({ nursery, version: 5, features: ['stock'] }));
  answer([{ nursery, version: 4 }]);
  await started;
  expect(told).toEqual([4, 5]);
  await changes.stop();
});
