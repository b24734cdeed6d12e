import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { stagesOf } from './protocol.ts';

let database: TestDatabase;
let nursery: TestNursery;
let staged: Awaited<ReturnType<typeof stagesOf>>;
let versionId: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  staged = await stagesOf(nursery);
  ({ versionId } = await staged.addProtocol());
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const suggest = (batchId: string) => staged.propagation.suggestForecast({ batchId });

describe('what learning suggests of a batch', () => {
  it('follows from the protocol’s figures where nothing was counted yet', async () => {
    const { batchId } = await staged.startUnder(versionId);
    const suggestion = await suggest(batchId);
    expect(suggestion).toMatchObject({
      confidence: 0.9,
      batches: 0,
      yield: { tried: 100, from: 'units', usualUnits: 63 },
    });
    expect(suggestion.yield?.cautiousUnits).toBeLessThan(63);
  });
  it('is ready by the usual and by the long durations, from the stage it is in', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1, happenedOn: '2026-05-18' });
    expect(await suggest(batchId)).toMatchObject({ readyOn: '2026-07-31', readyLateOn: '2026-09-03' });
  });
  it('rests on the count once the long wait for emergence is over', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1 });
    await staged.count(batchId, 40, '2026-03-14');
    expect((await suggest(batchId)).yield).toMatchObject({ tried: 40, from: 'count' });
  });
  it('changes with what other batches of the plant have shown, and says how many', async () => {
    const plant = await stagesOf(nursery, { code: 'ASIN', name: 'Asclepias incarnata' });
    const own = await plant.addProtocol();
    const { batchId } = await plant.startUnder(own.versionId);
    const before = await suggest(batchId);
    const poor = await plant.startUnder(own.versionId, { stagePosition: 1 });
    await plant.count(poor.batchId, 20, '2026-03-14');
    const after = await suggest(batchId);
    expect(after.yield?.usualUnits).toBeLessThan(before.yield?.usualUnits ?? 0);
    expect(after.stages.find(({ stage }) => stage === 'emergence')).toMatchObject({
      tried: 100,
      passed: 20,
      batches: 1,
      priorShare: 0.7,
    });
    expect(after.batches).toBe(1);
  });
  it('never changes what is stored', async () => {
    const { batchId } = await staged.startUnder(versionId, {
      cautiousUnits: 30,
      usualUnits: 40,
      readyOn: '2026-08-01',
    });
    await suggest(batchId);
    expect(await staged.page(batchId)).toMatchObject({ cautiousUnits: 30, usualUnits: 40, readyOn: '2026-08-01' });
  });
  it('reckons cells with several seeds each by the cells that come up', async () => {
    const two = await staged.addProtocol({ label: 'two seeds', seedsPerCell: 2 });
    const { batchId } = await staged.startUnder(two.versionId, { stagePosition: 1 });
    // 1 − 0.3² of the cells come up, and nine of ten of them get ready.
    expect((await suggest(batchId)).yield?.usualUnits).toBe(Math.round(100 * 0.91 * 0.9));
  });
  it('is silent where nobody knows the seeds of packs', async () => {
    const { batchId } = await staged.startUnder(versionId, { unit: 'pack', containerId: null, units: 4 });
    expect((await suggest(batchId)).yield).toBeNull();
  });
  it('reckons packs by their seeds', async () => {
    const { batchId } = await staged.startUnder(versionId, {
      unit: 'pack',
      containerId: null,
      units: 4,
      seedsSown: 400,
    });
    expect((await suggest(batchId)).yield).toMatchObject({ from: 'seeds', tried: 400 });
  });
  it('is silent without a protocol and for a batch that is closed', async () => {
    const { batchId } = await staged.start();
    const closed = await staged.startUnder(versionId);
    await staged.propagation.closeBatch(
      sent({ batchId: closed.batchId, writeOffCause: 'failed', happenedOn: '2026-05-01' }),
    );
    for (const id of [batchId, closed.batchId])
      expect(await suggest(id)).toMatchObject({ yield: null, readyOn: null, stages: [] });
  });
});

describe('what learning suggests of a start that is only thought of', () => {
  const planned = (more: object = {}) =>
    staged.propagation.suggestForecast({ protocolVersionId: versionId, units: 200, startedOn: '2027-02-01', ...more });
  it('follows from units, day and stage', async () => {
    expect(await planned()).toMatchObject({ yield: { tried: 200, from: 'units' }, readyOn: '2027-05-16' });
    expect(await planned({ stagePosition: 1 })).toMatchObject({ readyOn: '2027-04-16' });
  });
  it('says by when its plants would have to leave their pots', async () => {
    await nursery.as('grower').potLife.addRule(
      sent({
        ruleId: randomUUID(),
        basis: 'confined' as const,
        reach: { plantId: staged.plantId },
        span: 'P1Y',
        winterCarry: null,
        note: '',
      }),
    );
    // Up on 17 March 2027 by the usual days: a year on roots have been confined for as long as they may.
    expect((await planned()).potLife).toMatchObject({ pottedOn: '2027-03-17', limitOn: '2028-03-17' });
  });
  it('says nothing of pot life where nobody knows the pot', async () => {
    const bare = await staged.addProtocol({ label: 'bare', stages: [{ kind: 'stratification', days: [10, 20, 30] }] });
    expect(
      (await staged.propagation.suggestForecast({ protocolVersionId: bare.versionId, units: 10 })).potLife,
    ).toBeNull();
  });
  it('is refused for a stage that the protocol lacks', async () =>
    expect(await refusalOf(planned({ stagePosition: 9 }))).toMatchObject({
      code: 'stage-not-in-protocol',
      field: 'stagePosition',
    }));
  it('is refused for an unknown version', async () =>
    expect(await refusalOf(planned({ protocolVersionId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'protocolVersionId',
    }));
  it('is refused without a number of units', async () =>
    expect(await refusalOf(planned({ units: null }))).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'units' }] },
    }));
  it('is refused for a batch and a protocol at once', async () =>
    expect(await refusalOf(planned({ batchId: randomUUID() }))).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'batchId' }] },
    }));
});

describe('what a batch of a plant can be started with', () => {
  it('is its current protocols with their containers, its packs and what is known of its seed', async () => {
    const plant = await stagesOf(nursery, { code: 'ECPA', name: 'Echinacea pallida' });
    const own = await plant.addProtocol({ seedsPerCell: 2 });
    await nursery
      .as('grower')
      .sources.receiveSeed(
        sent({ sourceId: plant.sourceId, kind: 'bought' as const, grams: 12.5, happenedOn: '2026-02-01' }),
      );
    const packs = await plant.startUnder(own.versionId, { unit: 'pack', containerId: null, units: 5, seedsSown: 500 });
    expect(await staged.propagation.readStartChoices({ plantId: plant.plantId })).toMatchObject({
      confidence: 0.9,
      protocols: [
        {
          versionId: own.versionId,
          seedsPerCell: 2,
          startContainer: { id: plant.trayId, cells: 72 },
          targetContainer: { id: plant.potId },
        },
      ],
      packs: [{ batchId: packs.batchId, units: 5, seedsSown: 500, stageDueOn: '2026-03-31' }],
      seed: [{ sourceId: plant.sourceId, gramsLeft: 12.5 }],
    });
  });
  it('is an older version as well where one is asked for, but never that of another plant', async () => {
    const plant = await stagesOf(nursery, { code: 'ECPU', name: 'Echinacea purpurea' });
    const { protocolId, versionId: firstId } = await plant.addProtocol();
    await nursery.as('grower').propagation.reviseProtocol(
      sent({
        protocolId,
        versionId: randomUUID(),
        basedOnVersionId: firstId,
        startUnit: 'cell',
        startContainerId: plant.trayId,
        stages: [{ kind: 'emergence', shortDays: 1, usualDays: 2, longDays: 3, share: 0.5 }],
        changeNote: 'Quicker',
      }),
    );
    const numbers = async (asked: string) =>
      (await staged.propagation.readStartChoices({ plantId: plant.plantId, versionId: asked })).protocols.map(
        ({ number }) => number,
      );
    expect([await numbers(firstId), await numbers(versionId)]).toEqual([[2, 1], [2]]);
  });
  it('is nothing of a plant that nobody knows', async () =>
    expect(await refusalOf(staged.propagation.readStartChoices({ plantId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'plantId',
    }));
});
