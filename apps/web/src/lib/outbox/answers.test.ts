// What comes back over a real line, drawn: the outbox must keep what is certain, ask again about what is not, and lose nothing.
import fc from 'fast-check';
import { QueryClient } from '@tanstack/react-query';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { sendCommand, sendEntries, trpc } from '../api/client.ts';
import { sendUpload } from '../api/upload.ts';
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
const photo = new Blob(['a photo'], { type: 'image/jpeg' });
const transport = transportBy({
  send: sendCommand,
  sendTogether: sendEntries,
  sendWithBytes: sendUpload,
  bytesOf: async () => photo,
});
const send = async (...entries: Entry[]): Promise<Outcome | undefined> => (await transport(entries))[0];

afterEach(() => vi.unstubAllGlobals());

async function outcomeOf(answer: Answer, tries = 0): Promise<Outcome | undefined> {
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
      (await Promise.all([0, 1, 2, 3].map((tries) => outcomeOf(tooLarge, tries)))).map((outcome) => outcome?.kind),
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

describe('entries that go together', () => {
  const next: Entry = { ...entry, id: '00000000-0000-4000-8000-000000000002' };
  const answeredBy = async (answer: Answer) => {
    vi.stubGlobal('fetch', answer);
    return transport([entry, next]);
  };
  const outcomes = (...all: unknown[]) => json(200, { result: { data: { outcomes: all } } });

  it('are all kept where the answer is not our server’s, and the first goes alone the next time', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(strangeAnswer, noAnswer), async (answer) => {
        expect(await answeredBy(answer)).toMatchObject([{ kind: 'lost' }]);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    [400, 'invalid-input'],
    [404, 'not-found'],
    [413, 'body-too-large'],
    [500, 'fault'],
  ])('are all kept where the request as a whole is refused: %i %s', async (status, code) => {
    expect(await answeredBy(async () => json(status, { code, message: code, requestId: 'r' }))).toMatchObject([
      { kind: 'lost' },
    ]);
  });

  it('are answered by themselves', async () => {
    const refused = { code: 'not-enough-units', class: 'refusal', requestId: 'r' };
    expect(
      await answeredBy(async () => outcomes({ kind: 'refused', failure: refused }, { kind: 'answered', answer: null })),
    ).toMatchObject([
      { kind: 'refused', failure: { code: 'not-enough-units' } },
      { kind: 'answered', answer: null },
    ]);
  });

  it('wait from the first on that has no answer', async () => {
    const unknown = { code: 'outcome-unknown', class: 'retry', requestId: 'r' };
    expect(
      await answeredBy(async () => outcomes({ kind: 'answered', answer: 1 }, { kind: 'refused', failure: unknown })),
    ).toMatchObject([{ kind: 'answered' }, { kind: 'lost' }]);
    expect(await answeredBy(async () => outcomes({ kind: 'answered', answer: 1 }))).toHaveLength(1);
    expect(await answeredBy(async () => outcomes())).toMatchObject([{ kind: 'lost' }]);
  });

  it('say what they depend on', async () => {
    const lotId = '00000000-0000-4000-8000-0000000000aa';
    const bodies: string[] = [];
    vi.stubGlobal('fetch', async (_: string, init: RequestInit) => {
      bodies.push(String(init.body));
      throw new TypeError('Failed to fetch');
    });
    await transport([
      { ...entry, body: { lotId }, creates: [lotId] },
      { ...next, body: { lotId } },
    ]);
    const [sent] = bodies.map((body) => JSON.parse(body) as { entries: { after: string[] }[] });
    expect(sent?.entries.map(({ after }) => after)).toEqual([[], [entry.id]]);
  });
});

describe('an entry that a file goes with', () => {
  const withPhoto: Entry = { ...entry, name: 'files.addPhoto', body: { caption: 'tray 4' }, hasBytes: true };

  it('goes alone, as a form of the entry and then the file', async () => {
    const asked: [string, RequestInit][] = [];
    vi.stubGlobal('fetch', async (address: string, init: RequestInit) => {
      asked.push([address, init]);
      return json(200, { attachmentId: 'x' });
    });
    expect(await send(withPhoto)).toEqual({ kind: 'answered', answer: { attachmentId: 'x' } });
    const [[address, init]] = asked as [[string, RequestInit]];
    const form = init.body as FormData;
    expect([address, [...form.keys()]]).toEqual(['/files/photos', ['entry', 'bytes']]);
    expect(JSON.parse(String(form.get('entry')))).toEqual({
      commandId: entry.id,
      personId: ANN,
      body: { caption: 'tray 4' },
    });
    expect(await (form.get('bytes') as Blob).text()).toBe('a photo');
  });

  it('is refused, waits and is asked for again like the others', async () => {
    const outcome = async (answer: Answer) => {
      vi.stubGlobal('fetch', answer);
      return send(withPhoto);
    };
    const page = (status: number, code: string) => json(status, { code, message: code, data: {}, requestId: 'r' });
    expect(await outcome(async () => page(409, 'not-enough-units'))).toMatchObject({ kind: 'refused' });
    expect(await outcome(async () => page(401, 'not-signed-in'))).toEqual({ kind: 'signed-out' });
    expect(await outcome(async () => page(503, 'outcome-unknown'))).toMatchObject({ kind: 'lost' });
    expect(await outcome(async () => json(200, null))).toMatchObject({ kind: 'lost' });
    expect(await outcome(async () => new Response('<h1>Welcome</h1>', { status: 200 }))).toMatchObject({
      kind: 'lost',
    });
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
