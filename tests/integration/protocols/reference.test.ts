import { randomUUID } from 'node:crypto';
import { referencePlants, referenceProtocols } from '@rootclock/server/reference/index';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { referenceId } from '../../../apps/server/src/features/plants/reference-load.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent } from '../../support/nursery.ts';
import { content } from './protocols.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Awaited<ReturnType<typeof server.addNursery>>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
});
beforeEach(async () => {
  nursery = await server.addNursery();
  await nursery.as('owner').plants.loadReference(sent({}));
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const owner = () => nursery.as('owner').propagation;
const protocolId = (code: string, method: string) => referenceId(nursery.nurseryId, 'protocol', `${code}/${method}`);
const list = (more: object = {}) => owner().listProtocols({ perPage: 200, ...more });

describe('the reference protocols', () => {
  it('are announced to the owner, and added with one tap', async () => {
    expect(await list()).toMatchObject({ missingReference: referenceProtocols.length, total: referencePlants.length });
    expect((await nursery.as('grower').propagation.listProtocols({})).missingReference).toBe(0);
    expect(await owner().loadReferenceProtocols(sent({}))).toEqual({ protocols: referenceProtocols.length });
    const { rows, missingReference } = await list({ have: 'with' });
    expect(missingReference).toBe(0);
    expect(rows).toHaveLength(referencePlants.length);
    expect((await list({ have: 'without' })).total).toBe(0);
  });

  it('keep each figure’s standing and source, and find their containers', async () => {
    await owner().loadReferenceProtocols(sent({}));
    const { version } = await owner().readProtocol({ protocolId: protocolId('ECPA', 'seed') });
    expect(version).toMatchObject({
      number: 1,
      personName: null,
      standing: 'confirmed',
      startContainer: { name: 'plug tray, 50 deep cells' },
      targetContainer: { name: 'deep cone, 164 ml' },
    });
    expect(version.stages[0]).toMatchObject({
      kind: 'stratification',
      shortDays: 60,
      longDays: 90,
      durationStanding: 'confirmed',
      temperatureLowC: 1,
      temperatureHighC: 3,
      shareStanding: 'assumed',
    });
    expect(version.texts.references).toContain('Native Plant Network protocol T. Luna');
  });

  it('given again add nothing and change nothing', async () => {
    await owner().loadReferenceProtocols(sent({}));
    const id = protocolId('MOFI', 'seed');
    const before = await owner().readProtocol({ protocolId: id });
    const versionId = randomUUID();
    await owner().reviseProtocol(
      sent({
        protocolId: id,
        versionId,
        basedOnVersionId: before.currentVersionId,
        ...content(),
        changeNote: 'our own figures',
      }),
    );
    expect(await owner().loadReferenceProtocols(sent({}))).toEqual({ protocols: 0 });
    expect((await owner().readProtocol({ protocolId: id })).currentVersionId).toBe(versionId);
  });

  it('leave alone what the nursery wrote itself, and plants that it does not grow', async () => {
    const plantId = referenceId(nursery.nurseryId, 'plant', 'LUPE');
    const own = randomUUID();
    await owner().addProtocol(
      sent({ protocolId: own, versionId: randomUUID(), plantId, method: 'seed' as const, ...content() }),
    );
    await owner().retireProtocol(sent({ protocolId: own }));
    await nursery.as('owner').plants.retirePlant(sent({ plantId: referenceId(nursery.nurseryId, 'plant', 'RUHI') }));
    expect(await owner().loadReferenceProtocols(sent({}))).toEqual({ protocols: referenceProtocols.length - 2 });
    expect((await list({ plantId })).rows[0]?.protocols).toEqual([]);
  });

  it('go into a nursery without plants as none', async () => {
    const empty = await server.addNursery();
    expect(await empty.as('owner').propagation.loadReferenceProtocols(sent({}))).toEqual({ protocols: 0 });
  });

  it('are loaded by the owner alone', async () => {
    expect((await refusalOf(nursery.as('grower').propagation.loadReferenceProtocols(sent({})))).code).toBe(
      'not-allowed',
    );
  });
});

describe('the list', () => {
  beforeEach(async () => {
    await owner().loadReferenceProtocols(sent({}));
  });
  it('finds plants by any name and by method', async () => {
    expect((await list({ text: 'bergamot' })).rows.map((row) => row.scientificName)).toEqual(['Monarda fistulosa']);
    const cuttings = await list({ method: 'root-cutting', have: 'with' });
    expect(cuttings.rows.map((row) => row.code)).toEqual(['ASSP', 'ASTU', 'ASTUA']);
    expect(cuttings.rows.flatMap((row) => row.protocols.map((protocol) => protocol.method))).toEqual([
      'root-cutting',
      'root-cutting',
      'root-cutting',
    ]);
  });
  it('says how long each takes and what gets ready', async () => {
    const [row] = (await list({ text: 'Lupinus perennis' })).rows;
    expect(row?.protocols).toMatchObject([
      {
        method: 'seed',
        standing: 'confirmed',
        coldDays: null,
        totalDays: { short: 70, usual: 103, long: 170 },
        seedsPerCell: 1,
      },
    ]);
    // 0.9 come up, 0.9 grow on, 0.98 harden, 0.97 hold their root ball.
    expect(row?.protocols[0]?.shareReady).toBeCloseTo(0.9 * 0.9 * 0.98 * 0.97, 9);
  });
  it('is paged', async () => {
    const page = await owner().listProtocols({ perPage: 10, page: 2 });
    expect([page.rows.length, page.total, page.page]).toEqual([10, referencePlants.length, 2]);
  });
});
