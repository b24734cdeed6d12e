// What a promise costs: the answer while somebody types, by itself, and entries after which all lines that share plants are planned anew.
import { addDays, allocate, promise } from '@rootclock/domain';
import { drawSeason } from '../../support/allocation/season.ts';
import { streamOf } from '../load/chance.ts';
import type { Nursery } from '../nursery.ts';
import { serve } from '../serving.ts';
import { spread, type Spread } from './figures.ts';
import { readStock, sharedOut, Worker } from './stock.ts';
import { CLIENTS, type WayOfWriting, workFor } from './writes.ts';

export const MOST_PROMISE_MS = 50;
const ASKED = { supplies: 2000, lines: 500 };
const TIMES = 200;

export interface PromiseFigures extends Spread {
  supplies: number;
  lines: number;
  met: boolean;
}

/** Asks for what lines of a season ask for, on days around theirs, with all lines filled as they would be stored. */
export function measurePromise(seed: number): PromiseFigures {
  const season = drawSeason({ shape: 'parts', ...ASKED, ranks: ASKED.lines }, seed);
  const instance = { ...season, current: allocate(season).assignments };
  const chance = streamOf(seed, 'promises');
  const times = Array.from({ length: TIMES }, () => {
    const { accepts, on } = chance.pick(instance.demand);
    const ask = { accepts, units: chance.whole(1, 200), on: addDays(on, chance.whole(-20, 20)) };
    const from = performance.now();
    promise(instance, ask);
    return performance.now() - from;
  });
  const figures = spread(times);
  return { ...ASKED, ...figures, met: figures.p95Ms < MOST_PROMISE_MS };
}

export interface ReplanFigures extends WayOfWriting {
  clients: number;
}

/** Counts of lots that are promised to somebody: each finds one plant more or fewer and asks for a plan. */
export async function measureReplanning(nursery: Nursery, seconds: number, seed: number): Promise<ReplanFigures> {
  const { lots, places } = await readStock(nursery);
  const promised = lots.filter(
    ({ places: standing, freeUnits }) => freeUnits < [...standing.values()].reduce((sum, units) => sum + units, 0),
  );
  const people = sharedOut(promised, CLIENTS).map((own, nth) => new Worker(own, places, seed + nth));
  const serving = await serve(nursery.url, nursery.session);
  const counting = people.map((worker) => ({ next: () => worker.next('countLot'), done: worker.done.bind(worker) }));
  const send = (next: ReturnType<Worker['next']>) => serving.send('stock.countLot', next.sent);
  try {
    // The first ones pay for connections, plans and compiling.
    await workFor(seconds / 2, counting, [send]);
    const { times, seconds: taken } = await workFor(seconds, counting, [send]);
    return { clients: CLIENTS, ...spread(times), aSecond: times.length / taken };
  } finally {
    await serving.stop();
  }
}
