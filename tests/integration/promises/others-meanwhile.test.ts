// While one large component is being solved, other people read and book nearly as fast as ever.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { solver } from '../../../apps/server/src/features/promises/solving/solver.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { largeScope } from '../../support/large-scope.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

const [LOTS, LINES] = [4_000, 1_000];
const ROUNDS = 3;
const CALLS = 25;
/** Loose, since this runs on machines that do much else; the full size is told in DEVELOPERS.md. */
const AT_MOST = 4;

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let lotId: string;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  lotId = await story.addLot({ units: 500 });
});
afterAll(async () => {
  await solver.stop();
  await nursery.close();
  await database.drop();
});

const read = () => nursery.as('viewer').stock.listPlaces({});
const enter = (countedUnits: number) =>
  nursery
    .as('crew')
    .stock.countLot(
      sent({ lotId, placeId: story.placeId, countedUnits, countKind: 'counted' as const, happenedOn: '2026-05-20' }),
    );

async function timesOf(work: (at: number) => Promise<unknown>): Promise<number[]> {
  const times: number[] = [];
  for (let at = 0; at < CALLS; at++) {
    const began = performance.now();
    await work(at);
    times.push(performance.now() - began);
  }
  return times;
}
const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;

it('others read and book while a large component is solved', async () => {
  const quiet = { reads: [] as number[], entries: [] as number[] };
  const busy = { reads: [] as number[], entries: [] as number[] };
  const measure = async (into: typeof quiet) => {
    into.reads.push(...(await timesOf(read)));
    into.entries.push(...(await timesOf((at) => enter(100 + at))));
  };
  await measure({ reads: [], entries: [] });
  for (let round = 0; round < ROUNDS; round++) {
    await measure(quiet);
    let isOver = false;
    let solved = 0;
    const solving = (async () => {
      for (let seed = 0; !isOver; seed++) {
        solved += (await solver.apart('plan', largeScope(LOTS, LINES, round * 100 + seed))).length;
      }
    })();
    await measure(busy);
    isOver = true;
    await solving;
    expect(solved).toBeGreaterThan(LINES);
  }
  expect(median(busy.reads) / median(quiet.reads)).toBeLessThan(AT_MOST);
  expect(median(busy.entries) / median(quiet.entries)).toBeLessThan(AT_MOST);
});
