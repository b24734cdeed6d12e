// What comes back over a real line, drawn: the outbox must keep what is certain, ask again about what is not, and lose nothing.
import fc from 'fast-check';
import { QueryClient } from '@tanstack/react-query';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { sendCommand, trpc } from '../api/client.ts';
import { readFailure } from '../api/failure.ts';
import type { Entry } from './queue.ts';
import { transportBy, type Outcome } from './transport.ts';

const ANN = '00000000-0000-4000-8000-00000000000a';
const entry: Entry = {
  id: '00000000-0000-4000-8000-000000000001',
  name: 'stock.loseFromLot',
  title: '',
  body: { units: 3 },
  personId: ANN,
  enteredAt: 0,
  creates: [],
  from: '/',
  tries: 0,
  dueAt: 0,
  parked: null,
};

type Answer = () => Promise<Response>;
const send = transportBy(sendCommand);

afterEach(() => vi.unstubAllGlobals());

async function outcomeOf(answer: Answer, tries = 0): Promise<Outcome> {
  vi.stubGlobal('fetch', answer);
  return send({ ...entry, tries });
}

const JSON_TYPE = { 'content-type': 'application/json' };
const json = (status: number, body: unknown): Response =>
  new Response(JSON.stringify(body), { status, headers: JSON_TYPE });
const signed = (code: string, data: object = {}) => ({
  error: { code: -32_000, message: code, data: { code, requestId: 'r', ...data } },
});

/** Bodies that are not our server's: pages, half an answer, nothing, and JSON of somebody else's making. */
const strangeBody = fc.oneof(
  fc.constantFrom(
    '',
    '<!doctype html><h1>Welcome to the free network</h1>',
    '{',
    '[',
    'null',
    '""',
    '0',
    '[]',
    '[null]',
    '{}',
  ),
  fc.constantFrom(
    '{"login":"required"}',
    '{"message":"Unauthorized"}',
    '{"error":"denied"}',
    '{"error":{"message":"denied"}}',
    '{"result":null}',
    '{"result":"ok"}',
  ),
  fc.constantFrom(
    '{"code":"not-allowed"}',
    '{"error":{"code":403,"message":"not-allowed"}}',
    '{"error":{"code":-1,"message":"x","data":{"code":"of nobody"}}}',
  ),
  fc
    .integer({ min: 1, max: 60 })
    .map((cut) => JSON.stringify({ result: { data: { entryId: entry.id, lots: [] } } }).slice(0, cut)),
  fc.json().filter((text) => !/"(result|error|code)"/.test(text)),
);
const strangeStatus = fc.constantFrom(
  200,
  201,
  202,
  204,
  400,
  401,
  402,
  403,
  404,
  405,
  407,
  408,
  409,
  418,
  421,
  425,
  429,
  431,
  451,
  500,
  501,
  502,
  503,
  504,
  511,
  520,
  530,
);
const mayHaveBody = (status: number) => status !== 204;
const strangeType = fc.constantFrom('text/html', 'application/json', 'text/plain', '');

const strangeAnswer = fc.record({ status: strangeStatus, body: strangeBody, type: strangeType }).map(
  ({ status, body, type }): Answer =>
    async () =>
      new Response(mayHaveBody(status) ? body : null, { status, headers: type === '' ? {} : { 'content-type': type } }),
);
const noAnswer = fc.constantFrom<Answer>(
  async () => Promise.reject(new TypeError('Failed to fetch')),
  async () => Promise.reject(new DOMException('timed out', 'TimeoutError')),
  async () => Promise.reject(new DOMException('aborted', 'AbortError')),
  // The connection breaks within the body.
  async () =>
    new Response(
      new ReadableStream({
        start: (stream) =>
          void (stream.enqueue(new TextEncoder().encode('{"result":{"da')), stream.error(new TypeError('terminated'))),
      }),
      { status: 200, headers: JSON_TYPE },
    ),
);

describe('an entry whose answer is not our server’s', () => {
  it('is kept and sent again, whatever stands in between and however often', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(strangeAnswer, noAnswer), fc.nat({ max: 50 }), async (answer, tries) => {
        expect(await outcomeOf(answer, tries)).toMatchObject({ kind: 'lost' });
      }),
      { numRuns: 400 },
    );
  });

  it('is not sent on to where something in between points', async () => {
    const asked: RequestInit[] = [];
    vi.stubGlobal('fetch', async (_: string, init: RequestInit) => {
      asked.push(init);
      throw new TypeError('Failed to fetch');
    });
    expect(await send(entry)).toMatchObject({ kind: 'lost' });
    expect(asked.map(({ redirect }) => redirect)).toEqual(['error']);
  });

  it('is parked in the end only where a proxy finds it too large, since it would hold up the rest for ever', async () => {
    const tooLarge = async () => new Response('<h1>413</h1>', { status: 413 });
    expect(
      (await Promise.all([0, 1, 2, 3].map((tries) => outcomeOf(tooLarge, tries)))).map(({ kind }) => kind),
    ).toEqual(['lost', 'lost', 'lost', 'refused']);
  });
});

describe('an entry whose answer is our server’s', () => {
  it('is done with its answer', async () => {
    expect(await outcomeOf(async () => json(200, { result: { data: { entryId: 'e' } } }))).toEqual({
      kind: 'answered',
      answer: { entryId: 'e' },
    });
  });

  it('is refused at once where the server says so, in the form of a procedure or of a page', async () => {
    const refusals: [number, string][] = [
      [400, 'invalid-input'],
      [403, 'not-allowed'],
      [404, 'not-found'],
      [409, 'not-enough-units'],
      [422, 'root-ball-not-checked'],
      [403, 'forged-request'],
    ];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...refusals), fc.boolean(), async ([status, code], asPage) => {
        const body = asPage ? { code, message: code, requestId: 'r' } : signed(code);
        expect(await outcomeOf(async () => json(status, body))).toMatchObject({ kind: 'refused', failure: { code } });
      }),
      { numRuns: 40 },
    );
  });

  it('waits for its person where the session is over or another’s', async () => {
    expect(await outcomeOf(async () => json(401, signed('not-signed-in')))).toEqual({ kind: 'signed-out' });
    expect(await outcomeOf(async () => json(409, signed('another-person')))).toEqual({ kind: 'another-person' });
  });

  it('is asked for again where the server does not know', async () => {
    expect(await outcomeOf(async () => json(503, signed('outcome-unknown')), 20)).toMatchObject({ kind: 'lost' });
  });
});

describe('a read', () => {
  const client = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  const read = async (answer: Answer) => {
    vi.stubGlobal('fetch', answer);
    return client.fetchQuery({ ...trpc.people.me.queryOptions(), staleTime: 0 }).then(
      (data) => ({ data }),
      (error: unknown) => ({ failure: readFailure(error) }),
    );
  };

  it('shows nothing that is not our server’s, and says that it got no answer', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(strangeAnswer, noAnswer), async (answer) => {
        expect(await read(answer)).toEqual({ failure: { code: 'no-answer', class: 'retry' } });
      }),
      { numRuns: 300 },
    );
  });

  it('says what the server says', async () => {
    expect(await read(async () => json(200, [{ result: { data: { role: 'crew' } } }]))).toEqual({
      data: { role: 'crew' },
    });
    expect(await read(async () => json(403, [signed('not-allowed')]))).toMatchObject({
      failure: { code: 'not-allowed' },
    });
  });
});
