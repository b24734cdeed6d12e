// While one large component is being solved, other people read and book nearly as fast as ever.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { solver } from '../../../apps/server/src/features/promises/solving/solver.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { largeScope } from '../../support/large-scope.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { isCampaign } from '../../support/tries.ts';

const isAtLength = isCampaign('others-meanwhile');
const [LOTS, LINES] = isAtLength ? [20_000, 5_000] : [4_000, 1_000];
const ROUNDS = 3;
const WARM_CALLS = 20;
/** How many times as long as otherwise. The suite's is loose, since it runs beside other tests; a campaign wants a machine of its own. */
const AT_MOST = isAtLength ? { reads: 1.5, entries: 2 } : { reads: 4, entries: 4 };

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

interface Times {
  reads: number[];
  entries: number[];
}

/** One read and one entry after the other for as long as there is something to wait for. */
async function work(into: Times, isOver: (calls: number) => boolean): Promise<number> {
  const timed = async (times: number[], call: () => Promise<unknown>) => {
    const began = performance.now();
    await call();
    times.push(performance.now() - began);
  };
  let calls = 0;
  for (; calls === 0 || !isOver(calls); calls++) {
    await timed(into.reads, read);
    await timed(into.entries, () => enter(100 + (calls % 50)));
  }
  return calls;
}
const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;

it('others read and book while a large component is solved', async () => {
  const [quiet, busy]: [Times, Times] = [
    { reads: [], entries: [] },
    { reads: [], entries: [] },
  ];
  // The first ones pay for connections, compiling and the thread's start.
  await solver.apart('plan', largeScope(40, 10, 1));
  await work({ reads: [], entries: [] }, (calls) => calls >= WARM_CALLS);
  for (let seed = 0; seed < ROUNDS; seed++) {
    const scope = largeScope(LOTS, LINES, seed);
    let isSolved = false;
    const solving = solver.apart('plan', scope).finally(() => void (isSolved = true));
    const done = await work(busy, () => isSolved);
    expect((await solving).length).toBeGreaterThan(LINES);
    await work(quiet, (calls) => calls >= done);
  }
  const times = {
    reads: median(busy.reads) / median(quiet.reads),
    entries: median(busy.entries) / median(quiet.entries),
  };
  if (isAtLength)
    console.log(
      `${busy.reads.length} calls each while ${LOTS} lots were solved: ${JSON.stringify(times)} times as long`,
    );
  expect(times.reads).toBeLessThan(AT_MOST.reads);
  expect(times.entries).toBeLessThan(AT_MOST.entries);
});
