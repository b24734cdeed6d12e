// Stock commands of eight people at once through HTTP, and the same statements by eight connections through the bare driver, in turns.
import type { Nursery } from '../nursery.ts';
import { serve } from '../serving.ts';
import { spread, type Spread } from './figures.ts';
import { Recorder } from './recording.ts';
import { recordTemplates, Replayer, type Templates } from './replay.ts';
import { type NextCommand, readStock, sharedOut, Worker } from './stock.ts';

export const CLIENTS = 8;
export const LEAST_A_SECOND = 180;
export const MOST_P95_MS = 80;
/** What the bare statements may be slower. */
export const MOST_TIMES_BARE = 1.2;

export interface WayOfWriting extends Spread {
  aSecond: number;
}

export interface WriteFigures {
  clients: number;
  statements: Record<string, number>;
  http: WayOfWriting;
  bare: WayOfWriting;
  /** How many times as many the bare statements reach. */
  ratio: number;
  met: { aSecond: boolean; nearBare: boolean; p95: boolean };
}

type Send = (next: NextCommand) => Promise<void>;

/** Everyone sends, waits for the answer and sends again, until the time is over. What is under way then is awaited, and counts. */
export async function workFor(
  seconds: number,
  workers: readonly Pick<Worker, 'next' | 'done'>[],
  sends: readonly Send[],
): Promise<{ times: number[]; seconds: number }> {
  const times: number[] = [];
  const started = performance.now();
  const until = started + seconds * 1000;
  await Promise.all(
    workers.map(async (worker, nth) => {
      const send = sends[nth % sends.length];
      if (!send) throw new Error('nobody sends what is worked out');
      while (performance.now() < until) {
        const next = worker.next();
        const sentAt = performance.now();
        await send(next);
        times.push(performance.now() - sentAt);
        worker.done(next);
      }
    }),
  );
  return { times, seconds: (performance.now() - started) / 1000 };
}

/** Each way works for `seconds` in all, in turns, so that a machine that slows down slows both. */
const TURNS = 4;

export async function measureWrites(nursery: Nursery, seconds: number, seed: number): Promise<WriteFigures> {
  const { lots, places } = await readStock(nursery);
  // What is replayed replans nothing, so its lots must have units to lose that nobody was promised.
  const bareLots = lots.filter(({ freeUnits }, at) => at % 2 === 1 && freeUnits >= 20);
  const httpLots = lots.filter((_, at) => at % 2 === 0);
  const workersOf = (which: typeof lots, countsUp: boolean) =>
    sharedOut(which, CLIENTS).map((own, nth) => new Worker(own, places, seed + nth, countsUp));
  const people = { http: workersOf(httpLots, false), bare: workersOf(bareLots, true) };

  const templates = await templatesOf(nursery, people.bare);
  const serving = await serve(nursery.url, nursery.session);
  const replayers = await Promise.all(people.bare.map(() => Replayer.open(nursery, templates)));
  try {
    const http: Send[] = [(next) => serving.send(`stock.${next.kind}`, next.sent)];
    const bare: Send[] = replayers.map((replayer) => (next) => replayer.send(next));
    // The first ones pay for connections, plans and compiling.
    await workFor(seconds / 2, people.http, http);
    await workFor(seconds / 2, people.bare, bare);
    const taken = { http: { times: [] as number[], seconds: 0 }, bare: { times: [] as number[], seconds: 0 } };
    for (let turn = 0; turn < TURNS; turn++) {
      for (const [way, sends] of [
        ['http', http],
        ['bare', bare],
      ] as const) {
        const turned = await workFor(seconds / TURNS, people[way], sends);
        taken[way].times.push(...turned.times);
        taken[way].seconds += turned.seconds;
      }
    }
    return judged(templates, taken.http, taken.bare);
  } finally {
    await serving.stop();
    await Promise.all(replayers.map((replayer) => replayer.close()));
  }
}

async function templatesOf(nursery: Nursery, [worker]: readonly Worker[]): Promise<Templates> {
  if (!worker) throw new Error('there are too few living lots to work with');
  const recorder = await Recorder.open(nursery);
  try {
    return await recordTemplates(recorder, worker);
  } finally {
    await recorder.close();
  }
}

function judged(
  templates: Templates,
  http: { times: number[]; seconds: number },
  bare: { times: number[]; seconds: number },
): WriteFigures {
  const ways = {
    http: { ...spread(http.times), aSecond: http.times.length / http.seconds },
    bare: { ...spread(bare.times), aSecond: bare.times.length / bare.seconds },
  };
  return {
    clients: CLIENTS,
    statements: Object.fromEntries(
      Object.entries(templates).map(([kind, { statements }]) => [kind, statements.length]),
    ),
    ...ways,
    ratio: ways.bare.aSecond / ways.http.aSecond,
    met: {
      aSecond: ways.http.aSecond >= LEAST_A_SECOND,
      nearBare: ways.bare.aSecond / ways.http.aSecond <= MOST_TIMES_BARE,
      p95: ways.http.p95Ms < MOST_P95_MS,
    },
  };
}
