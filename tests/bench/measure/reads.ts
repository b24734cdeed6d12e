// Three reads through HTTP and their bare statements through the driver, on the whole history and on a tenth of it, turn by turn in one run.
import { APP_ROLE } from '@rootclock/server/db/pool';
import pg from 'pg';
import type { Nursery } from '../nursery.ts';
import { type Serving, serve } from '../serving.ts';
import { spread, type Spread } from './figures.ts';
import { ownStatements, Recorder, type Statement } from './recording.ts';

/** What the bare statements may be slower through everything that stands between them and a person, whichever of the two allows more. */
export const MOST_MORE_MS = 3;
export const MOST_TIMES = 1.3;
export const MOST_BARE_BOARD_MS = 10;
export const MOST_TIMES_LONGER_HISTORY = 1.3;

export interface ReadFigures {
  read: string;
  procedure: string;
  statements: number;
  bytes: number;
  http: Spread;
  bare: Spread;
  httpTenth: Spread;
  bareTenth: Spread;
  moreMs: number;
  times: number;
  timesTenth: number;
  bareTimesTenth: number;
  /** Whether the bare statements are quick enough is asked of the board alone. */
  met: { nearBare: boolean; bareIsQuick: boolean | null; asShortHistory: boolean };
}

interface Side {
  serving: Serving;
  client: pg.Client;
  statements: Map<string, Statement[]>;
}

const asked = (nursery: Nursery) => [
  { read: 'board', procedure: 'potLife.readBoard', input: {} },
  { read: 'stock table', procedure: 'stock.listLots', input: {} },
  { read: 'story of a lot', procedure: 'stock.readLot', input: { lotId: nursery.longLotId } },
];

/** One connection as the server's role, set to the nursery once and for all. */
async function bareConnection(nursery: Nursery): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: nursery.url, options: `-c role=${APP_ROLE}` });
  await client.connect();
  await client.query(`SELECT set_config('app.nursery', $1, false)`, [nursery.nurseryId]);
  return client;
}

async function openSide(nursery: Nursery): Promise<Side> {
  const recorder = await Recorder.open(nursery);
  const statements = new Map<string, Statement[]>();
  for (const { procedure, input } of asked(nursery))
    statements.set(procedure, ownStatements(await recorder.read(procedure, input)));
  await recorder.close();
  return { serving: await serve(nursery.url, nursery.session), client: await bareConnection(nursery), statements };
}

async function sendBare({ client, statements }: Side, procedure: string): Promise<void> {
  for (const { text, values, name } of statements.get(procedure) ?? [])
    await client.query({ text, values, name, rowMode: 'array' });
}

/** Times are of wall clocks, from the first byte sent to the last received; the ways take turns, each first as often as the others. */
export async function measureReads(whole: Nursery, tenth: Nursery, rounds: number): Promise<ReadFigures[]> {
  const sides = { whole: await openSide(whole), tenth: await openSide(tenth) };
  try {
    const figures: ReadFigures[] = [];
    for (const [nth, { read, procedure, input }] of asked(whole).entries()) {
      const inputTenth = asked(tenth)[nth]?.input ?? {};
      const bytes = Buffer.byteLength(await sides.whole.serving.read(procedure, input));
      const ways: [string, () => Promise<unknown>][] = [
        ['http', () => sides.whole.serving.read(procedure, input)],
        ['bare', () => sendBare(sides.whole, procedure)],
        ['httpTenth', () => sides.tenth.serving.read(procedure, inputTenth)],
        ['bareTenth', () => sendBare(sides.tenth, procedure)],
      ];
      const spreads = await takeTurns(ways, rounds);
      figures.push(
        judged({ read, procedure, statements: sides.whole.statements.get(procedure)?.length ?? 0, bytes }, spreads),
      );
    }
    return figures;
  } finally {
    for (const { serving, client } of Object.values(sides)) {
      await serving.stop();
      await client.end();
    }
  }
}

async function takeTurns(ways: [string, () => Promise<unknown>][], rounds: number): Promise<Record<string, Spread>> {
  const times = new Map(ways.map(([name]) => [name, [] as number[]]));
  // The first ones pay for connections, plans and compiling; they are not what a day is made of.
  const warmUp = Math.min(300, rounds);
  for (let round = -warmUp; round < rounds; round++) {
    for (let turn = 0; turn < ways.length; turn++) {
      const way = ways[(turn + round + warmUp) % ways.length];
      if (!way) continue;
      const started = performance.now();
      await way[1]();
      if (round >= 0) times.get(way[0])?.push(performance.now() - started);
    }
  }
  return Object.fromEntries([...times].map(([name, values]) => [name, spread(values)]));
}

function judged(
  about: Pick<ReadFigures, 'read' | 'procedure' | 'statements' | 'bytes'>,
  spreads: Record<string, Spread>,
): ReadFigures {
  const { http, bare, httpTenth, bareTenth } = spreads;
  if (!http || !bare || !httpTenth || !bareTenth) throw new Error('a way of reading was not measured');
  const moreMs = http.medianMs - bare.medianMs;
  const times = http.medianMs / bare.medianMs;
  const timesTenth = http.medianMs / httpTenth.medianMs;
  return {
    ...about,
    http,
    bare,
    httpTenth,
    bareTenth,
    moreMs,
    times,
    timesTenth,
    bareTimesTenth: bare.medianMs / bareTenth.medianMs,
    met: {
      nearBare: moreMs <= MOST_MORE_MS || times <= MOST_TIMES,
      bareIsQuick: about.read === 'board' ? bare.medianMs < MOST_BARE_BOARD_MS : null,
      asShortHistory: timesTenth <= MOST_TIMES_LONGER_HISTORY,
    },
  };
}
