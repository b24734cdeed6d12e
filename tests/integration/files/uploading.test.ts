// Photos over HTTP: who may, what is refused before it is read, and who sees what came of it.
import { randomUUID } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import type { Role } from '@rootclock/domain';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { drawing, samplePdf, samplePhoto } from '../../support/pictures.ts';
import { exchange } from '../../support/process/raw-exchange.ts';
import { cookieOf } from '../../support/session.ts';
import { addGrounds } from './grounds.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let ours: Omit<TestNursery, 'close'>;
let theirs: Omit<TestNursery, 'close'>;
let grounds: Awaited<ReturnType<typeof addGrounds>>;
let app: Awaited<ReturnType<typeof createApp>>;
let address: string;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  ours = await server.addNursery();
  theirs = await server.addNursery();
  grounds = await addGrounds(ours);
  app = await createApp({ databaseUrl: database.url, clock: server.clock.now, filesFolder: server.filesFolder });
  address = await app.listen({ host: '127.0.0.1', port: 0 });
});
afterAll(async () => {
  await app.close();
  await server.close();
  await database.drop();
});

const MEGABYTE = 1024 * 1024;

interface Sending {
  as?: Role | null;
  of?: typeof ours;
  bytes?: Uint8Array;
  to?: 'photos' | 'papers';
  entry?: unknown;
  headers?: Record<string, string>;
}

const entryOf = (more: object = {}) => sent({ attachmentId: randomUUID(), subject: grounds.lot, ...more });

async function send({
  as = 'crew',
  of = ours,
  bytes = samplePhoto,
  to = 'photos',
  entry = entryOf(),
  headers,
}: Sending = {}) {
  const form = new FormData();
  form.append('entry', JSON.stringify(entry));
  form.append('bytes', new Blob([new Uint8Array(bytes)]));
  const answer = await fetch(`${address}/files/${to}`, {
    method: 'POST',
    body: form,
    headers: { 'rootclock-upload': '1', ...(as && { cookie: await cookieOf(of, as) }), ...headers },
  });
  return {
    status: answer.status,
    told: (await answer.json()) as Record<string, unknown>,
    person: answer.headers.get('rootclock-person'),
  };
}

async function get(id: string, size = 'thumb', { as = 'viewer' as Role | null, of = ours } = {}) {
  const answer = await fetch(`${address}/files/${id}/${size}`, {
    headers: as ? { cookie: await cookieOf(of, as) } : {},
  });
  return { status: answer.status, headers: answer.headers, bytes: Buffer.from(await answer.arrayBuffer()) };
}

const added = async (sending: Sending = {}) => {
  const entry = entryOf();
  expect(await send({ entry, ...sending })).toMatchObject({ status: 200 });
  return entry.body.attachmentId;
};

describe('a photo that is sent', () => {
  it('is there in three sizes, and its sender is named', async () => {
    const entry = entryOf({ caption: 'First bloom' });
    const { status, told, person } = await send({ entry });
    expect([status, told, person]).toEqual([200, { attachmentId: entry.body.attachmentId }, ours.people.crew.personId]);
    for (const [size, type] of [
      ['thumb', 'image/webp'],
      ['view', 'image/webp'],
      ['full', 'image/jpeg'],
    ] as const) {
      const answer = await get(entry.body.attachmentId, size);
      expect([answer.status, answer.headers.get('content-type')]).toEqual([200, type]);
      expect(answer.headers.get('cache-control')).toBe('private, max-age=86400, immutable');
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.bytes.length).toBeGreaterThan(50);
    }
  });

  it('twice under one command id is one photo and one answer', async () => {
    const entry = entryOf();
    const answers = [await send({ entry }), await send({ entry })];
    expect(answers[1]).toEqual(answers[0]);
    const rows = await ours.as().files.listAttachments({ subject: grounds.lot });
    expect(rows.filter(({ id }) => id === entry.body.attachmentId)).toHaveLength(1);
  });

  it('with other bytes under the same command id is refused', async () => {
    const entry = entryOf();
    await send({ entry });
    const bytes = await drawing(4, { width: 50, height: 50 }).png().toBuffer();
    expect(await send({ entry, bytes })).toMatchObject({ status: 409, told: { code: 'command-id-reused' } });
  });

  it('is taken from whoever works in the field, and from nobody else', async () => {
    const statuses: Record<string, unknown> = {};
    for (const as of ['owner', 'grower', 'crew', 'viewer', null] as const) {
      const { status, told } = await send({ as });
      statuses[as ?? 'nobody'] = status === 200 ? 'taken' : told['code'];
    }
    expect(statuses).toEqual({
      owner: 'taken',
      grower: 'taken',
      crew: 'taken',
      viewer: 'not-allowed',
      nobody: 'not-signed-in',
    });
  });

  it('in another person’s name waits for that person', async () => {
    const entry = { ...entryOf(), personId: ours.people.owner.personId };
    expect(await send({ entry })).toMatchObject({ status: 409, told: { code: 'another-person' } });
  });

  it('for another nursery’s lot finds none', async () => {
    expect(await send({ of: theirs })).toMatchObject({ status: 404, told: { code: 'not-found' } });
  });

  it('of a page that is not ours is refused', async () => {
    const refused = { status: 403, told: { code: 'forged-request' } };
    expect(await send({ headers: { origin: 'https://elsewhere.example' } })).toMatchObject(refused);
    expect(await send({ headers: { 'sec-fetch-site': 'cross-site' } })).toMatchObject(refused);
    const bare = new FormData();
    bare.append('entry', JSON.stringify(entryOf()));
    const cookie = await cookieOf(ours, 'crew');
    // What a form of another site can send has no header of ours.
    expect((await fetch(`${address}/files/photos`, { method: 'POST', body: bare, headers: { cookie } })).status).toBe(
      415,
    );
  });

  it.each([
    ['no entry', (form: FormData) => form.append('bytes', new Blob([new Uint8Array(samplePhoto)]))],
    ['no file', (form: FormData) => form.append('entry', JSON.stringify(entryOf()))],
    [
      'its file before its entry',
      (form: FormData) => {
        form.append('bytes', new Blob([new Uint8Array(samplePhoto)]));
        form.append('entry', JSON.stringify(entryOf()));
      },
    ],
    [
      'an entry that is no JSON',
      (form: FormData) => {
        form.append('entry', '{');
        form.append('bytes', new Blob([new Uint8Array(samplePhoto)]));
      },
    ],
    [
      'an entry of 40 levels',
      (form: FormData) => {
        form.append('entry', `{"body":${'['.repeat(40)}${']'.repeat(40)}}`);
        form.append('bytes', new Blob([new Uint8Array(samplePhoto)]));
      },
    ],
    [
      'two files',
      (form: FormData) => {
        form.append('entry', JSON.stringify(entryOf()));
        form.append('bytes', new Blob([new Uint8Array(samplePhoto)]));
        form.append('bytes', new Blob([new Uint8Array(samplePhoto)]));
      },
    ],
  ])('with %s is refused as input', async (_, fill) => {
    const form = new FormData();
    fill(form);
    const headers = { 'rootclock-upload': '1', cookie: await cookieOf(ours, 'crew') };
    const answer = await fetch(`${address}/files/photos`, { method: 'POST', body: form, headers });
    const { code } = (await answer.json()) as { code: string };
    expect([answer.status < 500, code]).toEqual([true, 'invalid-input']);
  });
});

describe('a file of 15 MB', () => {
  const ofLength = (bytes: number) => Buffer.concat([samplePhoto, Buffer.alloc(bytes - samplePhoto.length)]);

  it('is taken', async () => {
    expect(await send({ bytes: ofLength(15 * MEGABYTE) })).toMatchObject({ status: 200 });
  });

  it.each([15 * MEGABYTE + 1, 24 * MEGABYTE])('and of %i bytes is refused, and the most is said', async (bytes) => {
    expect(await send({ bytes: ofLength(bytes) })).toMatchObject({
      status: 413,
      told: { code: 'file-too-large', data: { mostMegabytes: 15 } },
    });
  });
});

describe('a photo that is asked for', () => {
  it('is nobody’s who is not signed in', async () => {
    expect((await get(await added(), 'thumb', { as: null })).status).toBe(401);
  });

  it('is not there for another nursery, as one that nobody has', async () => {
    const id = await added();
    const [others, nobodys] = [await get(id, 'full', { of: theirs }), await get(randomUUID())];
    expect([others.status, nobodys.status]).toEqual([404, 404]);
    const told = (bytes: Buffer) => ({ ...(JSON.parse(bytes.toString()) as object), requestId: '' });
    expect(told(others.bytes)).toEqual(told(nobodys.bytes));
  });

  it.each(['large', '..%2f..', ''])('in the size “%s” is not there', async (size) => {
    expect((await get(await added(), size)).status).toBe(404);
  });
});

it('a paper is handed out to be saved, and can do nothing in a browser', async () => {
  const id = await added({ to: 'papers', bytes: samplePdf });
  const { headers, bytes } = await get(id, 'full');
  expect(bytes.equals(samplePdf)).toBe(true);
  expect([
    headers.get('content-type'),
    headers.get('content-disposition'),
    headers.get('content-security-policy'),
  ]).toEqual(['application/pdf', 'attachment; filename="paper-2026-05-20.pdf"', "default-src 'none'; sandbox"]);
  expect((await get(id, 'thumb')).status).toBe(404);
});

describe('on a slow line', () => {
  const patienceMs = 500;
  let impatient: Awaited<ReturnType<typeof createApp>>;
  beforeAll(async () => {
    const { clock, filesFolder } = server;
    impatient = await createApp({ databaseUrl: database.url, clock: clock.now, filesFolder, patienceMs });
    await impatient.listen({ host: '127.0.0.1', port: 0 });
  });
  afterAll(() => impatient.close());

  const part = (name: string, more = '') => `--x\r\nContent-Disposition: form-data; name="${name}"${more}\r\n\r\n`;

  /** Sends a photo in so many pieces, each after a tenth of what the server waits for anything else. */
  async function sendIn(pieces: number) {
    const paper = samplePdf.toString();
    const body = `${part('entry')}${JSON.stringify(entryOf())}\r\n${part('bytes', '; filename="a"')}${paper}\r\n--x--\r\n`;
    const head = [
      'POST /files/papers HTTP/1.1',
      'Host: 127.0.0.1',
      'Connection: close',
      'rootclock-upload: 1',
      `Cookie: ${await cookieOf(ours, 'crew')}`,
      'Content-Type: multipart/form-data; boundary=x',
      `Content-Length: ${body.length}`,
    ];
    const length = Math.ceil(body.length / pieces);
    const cut = Array.from({ length: pieces }, (_, at) => body.slice(at * length, (at + 1) * length));
    const { port } = impatient.server.address() as AddressInfo;
    return exchange(port, [`${head.join('\r\n')}\r\n\r\n`, ...cut], () => pause(patienceMs / 10));
  }

  it('a file may take longer than anything else', async () => {
    expect(await sendIn(20)).toMatchObject({ status: 200 });
  });

  it('a file that takes six times as long is cut', async () => {
    expect(await sendIn(90)).toMatchObject({ status: 408, json: { code: 'invalid-input' } });
  });
});
