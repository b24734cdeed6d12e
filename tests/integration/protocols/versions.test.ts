import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  loadCurrentVersions,
  loadProtocolVersion,
  planOf,
} from '../../../apps/server/src/features/propagation/protocols/store.ts';
import type { ReadContext } from '../../../apps/server/src/trpc/operation.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';
import { content, protocolOf, stage } from './protocols.ts';

let database: TestDatabase;
let nursery: TestNursery;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const grower = () => nursery.as('grower').propagation;
const warmer = {
  stages: [stage('sowing', { shortDays: 0, usualDays: 0, longDays: 0, share: 1 }), stage('emergence', { share: 0.9 })],
};
const revise = async (
  protocolId: string,
  basedOnVersionId: string,
  more: Parameters<typeof content>[0] = warmer,
  changeNote = 'No cold is needed',
) => {
  const versionId = randomUUID();
  await grower().reviseProtocol(sent({ protocolId, versionId, basedOnVersionId, ...content(more), changeNote }));
  return versionId;
};

/** What the stores of other features see, in a transaction as the server has it. */
const inStore = <Answer>(work: (context: ReadContext) => Promise<Answer>): Promise<Answer> =>
  nursery.app.transaction(async (tx) => {
    await tx.run`SELECT begin_read(${nursery.nurseryId}::uuid)`;
    return work({
      tx,
      nurseryId: nursery.nurseryId,
      personId: nursery.people.grower.personId,
      role: 'grower',
      today: '2026-05-20',
      now: new Date('2026-05-20T17:00:00Z'),
    });
  });

describe('a revision', () => {
  it('is a new version, and the old one stays as it was', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    const old = (await grower().readProtocol({ protocolId })).version;
    nursery.clock.set('2026-07-01');
    const newId = await revise(protocolId, versionId);
    const page = await grower().readProtocol({ protocolId });
    expect(page).toMatchObject({
      currentVersionId: newId,
      version: { number: 2, madeOn: '2026-07-01', changeNote: 'No cold is needed' },
      before: { versionId },
    });
    expect(page.versions.map(({ number, changeNote }) => [number, changeNote])).toEqual([
      [2, 'No cold is needed'],
      [1, ''],
    ]);
    expect((await grower().readProtocol({ protocolId, versionId })).version).toEqual(old);
  });

  it('leaves batches with the version they were started under', async () => {
    const { plantId, protocolId, versionId } = await protocolOf(nursery);
    const stock = stockOf(nursery);
    const containerId = await stock.addContainer({ code: `tray-${randomUUID().slice(0, 6)}`, kind: 'tray', cells: 50 });
    const batchId = randomUUID();
    await grower().startBatch(
      sent({
        batchId,
        plantId,
        sourceId: await stock.addSource(plantId),
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId,
        trays: 1,
        placeId: await stock.addPlace(),
        happenedOn: '2026-05-19',
      }),
    );
    await nursery.sql('UPDATE batch SET protocol_version_id = $2 WHERE id = $1', [batchId, versionId]);
    const newId = await revise(protocolId, versionId);
    const [{ kept } = { kept: '' }] = await nursery.sql<{ kept: string }>(
      'SELECT protocol_version_id::text AS kept FROM batch WHERE id = $1',
      [batchId],
    );
    expect(kept).toBe(versionId);
    const page = await grower().readProtocol({ protocolId });
    expect(page.versions.map((row) => [row.versionId, row.batches, row.openBatches])).toEqual([
      [newId, 0, 0],
      [versionId, 1, 1],
    ]);
    expect(page.batches).toMatchObject([
      { batchId, versionNumber: 1, startedOn: '2026-05-19', startedUnits: 50, unit: 'cell', closedOn: null },
    ]);
    expect((await grower().listProtocols({ plantId })).rows[0]?.protocols).toMatchObject([
      { number: 2, openBatches: 1 },
    ]);
  });

  it('is refused when somebody wrote a newer version meanwhile', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    await revise(protocolId, versionId);
    const refusal = await refusalOf(revise(protocolId, versionId, { stages: [stage('emergence')] }));
    expect(refusal).toMatchObject({ code: 'protocol-moved-on', field: 'basedOnVersionId', data: { number: 2 } });
    expect((await grower().readProtocol({ protocolId })).versions).toHaveLength(2);
  });

  it('is refused when it changes nothing', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    expect(await refusalOf(revise(protocolId, versionId, {}))).toMatchObject({
      code: 'protocol-unchanged',
      data: { number: 1 },
    });
  });

  it('may change words alone', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    await revise(protocolId, versionId, { texts: { storage: 'Kept in the cold frame' } });
    expect((await grower().readProtocol({ protocolId })).version.texts.storage).toBe('Kept in the cold frame');
  });

  it('says why', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    expect(await refusalOf(revise(protocolId, versionId, warmer, '  '))).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'changeNote', problem: 'required' }] },
    });
  });

  it('is refused as the protocol itself would be', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    expect(
      await refusalOf(revise(protocolId, versionId, { stages: [stage('emergence', { usualDays: 3 })] })),
    ).toMatchObject({ code: 'duration-out-of-order', field: 'stages.0.usualDays', data: { least: 7 } });
  });

  it('is based on a version of the same protocol', async () => {
    const { protocolId } = await protocolOf(nursery);
    const { versionId } = await protocolOf(nursery);
    expect(await refusalOf(revise(protocolId, versionId))).toMatchObject({
      code: 'not-found',
      field: 'basedOnVersionId',
    });
    expect(await refusalOf(revise(protocolId, randomUUID()))).toMatchObject({
      code: 'not-found',
      field: 'basedOnVersionId',
    });
  });

  it('takes no id that is taken', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    const body = { protocolId, versionId, basedOnVersionId: versionId, ...content(warmer), changeNote: 'x' };
    expect(await refusalOf(grower().reviseProtocol(sent(body)))).toMatchObject({
      code: 'id-taken',
      field: 'versionId',
    });
  });
});

describe('versions in the database', () => {
  it('are changed and deleted by nobody', async () => {
    const { versionId } = await protocolOf(nursery);
    await expect(nursery.app.run`UPDATE protocol_version SET number = 9 WHERE id = ${versionId}::uuid`).rejects.toThrow(
      /permission denied/,
    );
    await expect(
      nursery.app.run`UPDATE protocol_stage SET share = 0 WHERE version_id = ${versionId}::uuid`,
    ).rejects.toThrow(/permission denied/);
    await expect(nursery.sql('DELETE FROM protocol_version WHERE id = $1', [versionId])).rejects.toThrow(
      /retired, never deleted/,
    );
  });
});

describe('a retired protocol', () => {
  it('is not revised until it is taken back', async () => {
    const { plantId, protocolId, versionId } = await protocolOf(nursery);
    await grower().retireProtocol(sent({ protocolId }));
    expect(await refusalOf(revise(protocolId, versionId))).toMatchObject({
      code: 'protocol-retired',
      field: 'protocolId',
      data: { method: 'seed' },
    });
    expect((await grower().listProtocols({ plantId })).rows).toMatchObject([{ protocols: [] }]);
    expect((await grower().listProtocols({ plantId, retired: true })).rows).toMatchObject([
      { protocols: [{ protocolId, isRetired: true }] },
    ]);
    expect((await grower().readProtocol({ protocolId })).isRetired).toBe(true);
    await grower().restoreProtocol(sent({ protocolId }));
    await revise(protocolId, versionId);
    expect((await grower().listProtocols({ plantId })).rows).toMatchObject([
      { protocols: [{ protocolId, number: 2 }] },
    ]);
  });

  it('is not written a second time, but taken back', async () => {
    const { plantId, protocolId } = await protocolOf(nursery);
    await grower().retireProtocol(sent({ protocolId }));
    const again = { protocolId: randomUUID(), versionId: randomUUID(), plantId, method: 'seed' as const, ...content() };
    expect(await refusalOf(grower().addProtocol(sent(again)))).toMatchObject({
      code: 'protocol-exists',
      data: { isRetired: true },
    });
  });
});

describe('what other features load', () => {
  it('is the current version of protocols in use, with the plant’s dormant months', async () => {
    const { plantId, protocolId, versionId } = await protocolOf(nursery);
    const { plantId: otherId, protocolId: retiredId } = await protocolOf(nursery);
    await grower().retireProtocol(sent({ protocolId: retiredId }));
    const newId = await revise(protocolId, versionId);
    const versions = await inStore((context) => loadCurrentVersions(context, [plantId, otherId]));
    expect(versions).toMatchObject([
      {
        versionId: newId,
        protocolId,
        number: 2,
        plantId,
        method: 'seed',
        label: '',
        isCurrent: true,
        startUnit: 'cell',
        dormantMonths: [10, 11, 12, 1, 2, 3, 4],
      },
    ]);
    expect(planOf(versions[0]!)).toMatchObject({
      stages: [
        { position: 0, kind: 'sowing', share: 1 },
        { position: 1, kind: 'emergence', share: 0.9 },
      ],
    });
    expect(
      (await inStore((context) => loadCurrentVersions(context, 'all'))).map((version) => version.versionId),
    ).toContain(newId);
  });

  it('is any version by its id, however old', async () => {
    const { protocolId, versionId } = await protocolOf(nursery);
    await revise(protocolId, versionId);
    expect(await inStore((context) => loadProtocolVersion(context, versionId))).toMatchObject({
      number: 1,
      isCurrent: false,
      stages: [{ kind: 'stratification' }, {}, {}, {}],
    });
    expect(
      await refusalOf(
        inStore((context) => loadProtocolVersion(context, randomUUID())).catch((error: unknown) => {
          throw Object.assign(new Error(), { cause: error });
        }),
      ),
    ).toMatchObject({ code: 'not-found', field: 'protocolVersionId' });
  });
});
