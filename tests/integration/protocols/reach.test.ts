import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { content, protocolOf } from './protocols.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  nursery = { ...(await server.addNursery()), close: server.close };
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

describe('a protocol of another nursery', () => {
  it('is not found, by whatever command or read', async () => {
    const other = await server.addNursery();
    const { protocolId, versionId, plantId } = await protocolOf(nursery);
    const theirs = other.as('owner').propagation;
    const revision = {
      protocolId,
      versionId: randomUUID(),
      basedOnVersionId: versionId,
      ...content(),
      changeNote: 'x',
    };
    for (const work of [
      () => theirs.readProtocol({ protocolId }),
      () => theirs.reviseProtocol(sent(revision)),
      () => theirs.retireProtocol(sent({ protocolId })),
      () => theirs.restoreProtocol(sent({ protocolId })),
    ]) {
      expect(await refusalOf(work())).toMatchObject({ code: 'not-found', field: 'protocolId' });
    }
    expect((await theirs.listProtocols({ plantId })).rows).toEqual([]);
  });
});

describe('who may', () => {
  it.each(['crew', 'viewer'] as const)('%s read protocols and write none', async (role) => {
    const { protocolId, versionId, plantId } = await protocolOf(nursery);
    const asked = nursery.as(role).propagation;
    expect((await asked.readProtocol({ protocolId })).protocolId).toBe(protocolId);
    for (const work of [
      () =>
        asked.addProtocol(
          sent({
            protocolId: randomUUID(),
            versionId: randomUUID(),
            plantId,
            method: 'seed' as const,
            label: 'e',
            ...content(),
          }),
        ),
      () =>
        asked.reviseProtocol(
          sent({ protocolId, versionId: randomUUID(), basedOnVersionId: versionId, ...content(), changeNote: 'x' }),
        ),
      () => asked.retireProtocol(sent({ protocolId })),
      () => asked.restoreProtocol(sent({ protocolId })),
      () => asked.loadReferenceProtocols(sent({})),
    ])
      expect((await refusalOf(work())).code).toBe('not-allowed');
  });
});
