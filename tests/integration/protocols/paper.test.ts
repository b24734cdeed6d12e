import { randomUUID } from 'node:crypto';
import { propagation as contracts } from '@rootclock/contracts';
import { referenceProtocols } from '@rootclock/server/reference/index';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { referenceId } from '../../../apps/server/src/features/plants/reference-load.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, testClock, type TestNursery } from '../../support/nursery.ts';
import { protocolOf, stage } from './protocols.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
const cookies = new Map<string, string>();

beforeAll(async () => {
  database = await createDatabase();
  app = await createApp({ databaseUrl: database.url, clock: testClock().now });
  await app.ready();
  // The owner signs in over HTTP, since pages are asked for there; the rest of the nursery is made beside it.
  const owner = {
    nurseryName: 'Żółw & Sons',
    zone: 'America/Chicago',
    name: 'Łucja',
    email: 'owner@example.test',
    password: 'long enough to hold',
  };
  const made = await app.inject({
    method: 'POST',
    url: '/trpc/people.createFirstOwner',
    headers: { 'content-type': 'application/json' },
    payload: sent<object>(owner),
  });
  cookies.set('own', `rootclock_session=${made.cookies[0]!.value}`);
  server = await openServer(database);
  const [{ id }] = (await server.sql<{ id: TestNursery['nurseryId'] }>('SELECT id::text FROM nursery')) as [
    { id: TestNursery['nurseryId'] },
  ];
  const [{ person_id } = { person_id: '' }] = await server.sql<{ person_id: string }>(
    'SELECT person_id::text FROM membership',
  );
  const caller = {
    nurseryId: id,
    personId: person_id,
    personName: 'Łucja',
    email: owner.email,
    role: 'owner' as const,
  };
  const people = { owner: caller, grower: caller, crew: caller, viewer: caller };
  nursery = {
    nurseryId: id,
    clock: server.clock,
    runner: server.runner,
    app: server.app,
    files: server.files,
    filesFolder: server.filesFolder,
    people,
    as: server.serve(people),
    sql: server.sql,
    close: server.close,
  };
}, 120_000);
afterAll(async () => {
  await app.close();
  await server.close();
  await database.drop();
});

const ask = (versionId: string, { cookie = cookies.get('own') ?? '', language = '' } = {}) =>
  app.inject({
    method: 'GET',
    url: `/paper/protocols/${versionId}.pdf${language ? `?language=${language}` : ''}`,
    headers: { cookie },
  });

async function read(versionId: string, options: Parameters<typeof ask>[1] = {}) {
  const response = await ask(versionId, options);
  expect(response.statusCode).toBe(200);
  const document = await getDocumentProxy(new Uint8Array(response.rawPayload));
  const { text } = await extractText(document, { mergePages: true });
  const [, , width, height] = (await document.getPage(1)).view;
  return { text: text.replaceAll(/\s+/g, ' '), pages: document.numPages, size: [width ?? 0, height ?? 0], response };
}

const versionOf = (plant: string, method: string) =>
  referenceId(nursery.nurseryId, 'protocol-version', `${plant}/${method}`);

describe('a printed protocol', () => {
  it('says on one page what the protocol says, with the standing and the source of its figures', async () => {
    const { text, pages, response } = await read(versionOf('ECPA', 'seed'));
    expect(pages).toBe(1);
    expect(response.headers['content-type']).toBe('application/pdf');
    expect(response.headers['content-disposition']).toBe('inline; filename="ECPA-seed-1.pdf"');
    for (const words of [
      'Echinacea pallida',
      'Propagation protocol',
      'from seed',
      'Propagule collection',
      'Propagule processing',
      'Pre-planting treatments',
      'Growing area preparation',
      'Establishment phase',
      'Active growth phase',
      'Hardening phase',
      'Harvest',
      'Storage',
      'References',
      'Total time to harvest',
      '75 days (60 to 90)',
      '700 days. 160 ml cone',
      '60, 75, 90 (from a published source [1])',
      '[1] Native Plant Network protocol T. Luna',
      'assumed',
    ])
      expect(text).toContain(words);
  });

  it('keeps letters such as Ż', async () => {
    const { text } = await read(
      (await protocolOf(nursery, { texts: { collection: 'Zażółć gęślą jaźń; Ősz, Čáp, Ñandú, Ελιά' } })).versionId,
    );
    expect(text).toContain('Zażółć gęślą jaźń; Ősz, Čáp, Ñandú, Ελιά');
    expect(text).toContain('Żółw & Sons');
    expect(text).toContain('written by Łucja');
  });

  it('is on paper as the nursery measures', async () => {
    const versionId = versionOf('ECPA', 'seed');
    const inches = await read(versionId);
    expect(inches.size).toEqual([612, 792]);
    expect(inches.text).toContain('34–37 °F');
    await nursery.sql(`UPDATE nursery SET units = 'metric' WHERE id = $1`, [nursery.nurseryId]);
    const metric = await read(versionId);
    expect(metric.size.map(Math.round)).toEqual([595, 842]);
    expect(metric.text).toContain('1–3 °C');
    await nursery.sql(`UPDATE nursery SET units = 'us' WHERE id = $1`, [nursery.nurseryId]);
  });

  it('speaks the reader’s language in its own words', async () => {
    const { text } = await read(versionOf('MOFI', 'seed'), { language: 'es' });
    expect(text).toContain('Protocolo de propagación');
    expect(text).toContain('Recolección');
    expect((await read(versionOf('MOFI', 'seed'), { language: 'constructor' })).text).toContain('Propagation protocol');
  });

  it('that says too much for a page is cut, and says so', async () => {
    const long = Array.from({ length: 190 }, (_, at) => `word${at}`).join(' ');
    const texts = Object.fromEntries(
      contracts.PROTOCOL_TEXTS.map((field) => [field, `${field} begins. ${long} ${long}`.slice(0, 2000)]),
    );
    const kinds = [
      'scarification',
      'stratification',
      'sowing',
      'emergence',
      'pricking-out',
      'growing-on',
      'hardening',
      'root-check',
      'ready',
    ] as const;
    const stages = kinds.map((kind) =>
      stage(kind, {
        note: `${kind} note. ${long}`,
        medium: 'm'.repeat(200),
        durationStanding: 'confirmed',
        durationSource: `${kind} source ${'s'.repeat(400)}`,
      }),
    );
    const { text, pages } = await read((await protocolOf(nursery, { texts, stages })).versionId);
    expect(pages).toBe(1);
    expect(text).toContain('(continued on screen)');
    expect(text).toContain('Not all of it fits one page');
    for (const field of contracts.PROTOCOL_TEXTS) expect(text).toContain(`${field} begins.`);
  });

  it('that says little does not say that it was cut', async () => {
    expect((await read((await protocolOf(nursery)).versionId)).text).not.toContain('continued on screen');
  });

  it('is one page for every reference protocol, uncut', async () => {
    for (const { plantCode, method } of referenceProtocols.filter((_, at) => at % 6 === 0)) {
      const { pages, text } = await read(versionOf(plantCode, method));
      expect({ plantCode, method, pages, isCut: text.includes('continued on screen') }).toEqual({
        plantCode,
        method,
        pages: 1,
        isCut: false,
      });
    }
  });

  it('of an older version stays what it was', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    const body = {
      protocolId,
      versionId: randomUUID(),
      basedOnVersionId: versionId,
      startUnit: 'cell' as const,
      stages: [stage('emergence', { usualDays: 25 })],
      changeNote: 'slower here',
    };
    await nursery.as('owner').propagation.reviseProtocol(sent(body));
    expect((await read(versionId)).text).toContain('version 1');
    expect((await read(body.versionId)).text).toContain('7, 25, 28');
  });
});

describe('the address of a printed protocol', () => {
  it('answers nobody who is not signed in', async () => {
    const response = await ask(versionOf('ECPA', 'seed'), { cookie: 'rootclock_session=nobody' });
    expect([response.statusCode, response.json().code]).toEqual([401, 'not-signed-in']);
  });
  it('answers another nursery’s as none', async () => {
    const other = { ...(await server.addNursery()), close: server.close };
    const { versionId } = await protocolOf(other);
    const response = await ask(versionId);
    expect([response.statusCode, response.json().code]).toEqual([404, 'not-found']);
  });
  it.each(['nonsense', '------------------------------------', '00000000-0000-4000-8000-000000000000'])(
    'answers %s as none, and with no fault',
    async (versionId) => {
      const response = await ask(versionId);
      expect(response.statusCode).toBeGreaterThanOrEqual(400);
      expect(response.statusCode).toBeLessThan(500);
    },
  );
});
