import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';
import { content, protocolOf, stage } from './protocols.ts';

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

const grower = () => nursery.as('grower').propagation;
const read = (protocolId: string, versionId?: string) =>
  nursery.as('crew').propagation.readProtocol({ protocolId, ...(versionId ? { versionId } : {}) });
const rowsOf = async (table: string) =>
  (
    await nursery.sql<{ count: number }>(`SELECT count(*)::int AS count FROM ${table} WHERE nursery_id = $1`, [
      nursery.nurseryId,
    ])
  )[0]?.count;

describe('a protocol', () => {
  it('keeps what was written, figure by figure, each with its standing', async () => {
    const stages = [
      stage('stratification', {
        shortDays: 60,
        usualDays: 75,
        longDays: 90,
        share: 1,
        durationStanding: 'confirmed',
        durationSource: 'Native Plant Network protocol',
        temperatureLowC: 1,
        temperatureHighC: 3,
        light: 'dark',
        medium: 'damp sand',
      }),
      stage('sowing', { season: { fromMd: '11-01', toMd: '02-29' }, depthMm: 2 }),
      stage('emergence', { share: 0.655, note: 'in light' }),
      stage('growing-on', { rests: true }),
    ];
    const { protocolId, versionId } = await protocolOf(nursery, {
      stages,
      seedsPerCell: 3,
      texts: { collection: 'In October' },
    });
    const page = await read(protocolId);
    expect(page).toMatchObject({
      currentVersionId: versionId,
      isRetired: false,
      method: 'seed',
      before: null,
      versions: [{ number: 1, madeOn: '2026-05-20', personName: 'Test grower', batches: 0 }],
    });
    expect(page.version).toMatchObject({ number: 1, seedsPerCell: 3, standing: 'own setting', source: null });
    expect(page.version.texts).toMatchObject({ collection: 'In October', references: '' });
    expect(
      page.version.stages.map(
        ({ kind, shortDays, usualDays, longDays, share, durationStanding, durationSource, shareStanding }) => [
          kind,
          shortDays,
          usualDays,
          longDays,
          share,
          durationStanding,
          durationSource,
          shareStanding,
        ],
      ),
    ).toEqual([
      ['stratification', 60, 75, 90, 1, 'confirmed', 'Native Plant Network protocol', 'own setting'],
      ['sowing', 7, 14, 28, 0.8, 'own setting', null, 'own setting'],
      ['emergence', 7, 14, 28, 0.655, 'own setting', null, 'own setting'],
      ['growing-on', 7, 14, 28, 0.8, 'own setting', null, 'own setting'],
    ]);
    expect(page.version.stages[0]).toMatchObject({
      temperatureLowC: 1,
      temperatureHighC: 3,
      light: 'dark',
      medium: 'damp sand',
      season: null,
      rests: false,
    });
    expect(page.version.stages[1]).toMatchObject({ season: { fromMd: '11-01', toMd: '02-29' }, depthMm: 2 });
  });

  const refused: [string, Parameters<typeof content>[0], string, string, Record<string, unknown>][] = [
    [
      'a usual length below the short one',
      { stages: [stage('sowing'), stage('emergence', { usualDays: 6 })] },
      'duration-out-of-order',
      'stages.1.usualDays',
      { stage: 'emergence', pace: 'usual', than: 'short', least: 7, days: 6 },
    ],
    [
      'a long length below the usual one',
      { stages: [stage('emergence', { longDays: 13 })] },
      'duration-out-of-order',
      'stages.0.longDays',
      { stage: 'emergence', pace: 'long', than: 'usual', least: 14, days: 13 },
    ],
    [
      'stages out of order',
      { stages: [stage('emergence'), stage('sowing')] },
      'stage-out-of-order',
      'stages.1.kind',
      { stage: 'sowing', before: 'emergence' },
    ],
    [
      'a stage twice',
      { stages: [stage('emergence'), stage('emergence')] },
      'stage-twice',
      'stages.1.kind',
      { stage: 'emergence' },
    ],
    [
      'cuttings among seed',
      { stages: [stage('sticking')] },
      'stage-not-for-method',
      'stages.0.kind',
      { stage: 'sticking', method: 'seed' },
    ],
    [
      'a warmest below the coldest',
      { stages: [stage('emergence', { temperatureLowC: 20, temperatureHighC: 18.5 })] },
      'temperature-out-of-order',
      'stages.0.temperatureHighC',
      { low: 20, high: 18.5 },
    ],
    [
      'pieces of seed',
      { startUnit: 'piece' },
      'unit-not-for-method',
      'startUnit',
      { unit: 'piece', method: 'seed', fits: ['cell', 'tray', 'pack'] },
    ],
    [
      'seeds to a cell where there are none',
      { startUnit: 'pack', seedsPerCell: 2 },
      'seeds-need-cells',
      'seedsPerCell',
      { unit: 'pack' },
    ],
  ];
  it.each(refused)('is refused with %s, and nothing is written', async (_, more, code, field, data) => {
    const plantId = await stockOf(nursery).addPlant({
      name: `Liatris ${randomUUID().slice(0, 8)}`,
      code: randomCode(),
    });
    const before = await rowsOf('protocol');
    const refusal = await refusalOf(
      grower().addProtocol(
        sent({ protocolId: randomUUID(), versionId: randomUUID(), plantId, method: 'seed' as const, ...content(more) }),
      ),
    );
    expect(refusal).toEqual({ code, field, data });
    expect(await rowsOf('protocol')).toBe(before);
  });

  const misshapen: [string, Parameters<typeof stage>[1], string, string][] = [
    ['a share above all of them', { share: 1.01 }, 'stages.0.share', 'not-a-share'],
    ['a share below none', { share: -0.01 }, 'stages.0.share', 'not-a-share'],
    ['a length below nothing', { shortDays: -1 }, 'stages.0.shortDays', 'too-small'],
    ['a length of more than five years', { longDays: 1831 }, 'stages.0.longDays', 'too-big'],
    ['half a day', { usualDays: 14.5 }, 'stages.0.usualDays', 'not-whole'],
    [
      'a season that begins on a day that is none',
      { season: { fromMd: '02-30', toMd: '03-01' } },
      'stages.0.season.fromMd',
      'not-a-date',
    ],
    ['a published length without its source', { durationStanding: 'confirmed' }, 'stages.0.durationSource', 'required'],
    [
      'a published share without its source',
      { shareStanding: 'confirmed-vendor', shareSource: ' ' },
      'stages.0.shareSource',
      'required',
    ],
  ];
  it.each(misshapen)('is refused with %s', async (_, more, path, problem) => {
    const { plantId } = await protocolOf(nursery);
    const refusal = await refusalOf(
      grower().addProtocol(
        sent({
          protocolId: randomUUID(),
          versionId: randomUUID(),
          plantId,
          method: 'seed' as const,
          label: 'a',
          ...content({ stages: [stage('emergence', more)] }),
        }),
      ),
    );
    expect(refusal).toMatchObject({ code: 'invalid-input', data: { issues: [{ path, problem }] } });
  });

  it('is refused without stages', async () => {
    const { plantId } = await protocolOf(nursery);
    const refusal = await refusalOf(
      grower().addProtocol(
        sent({
          protocolId: randomUUID(),
          versionId: randomUUID(),
          plantId,
          method: 'seed' as const,
          label: 'b',
          ...content({ stages: [] }),
        }),
      ),
    );
    expect(refusal).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'stages', problem: 'required' }] },
    });
  });

  it('of seed is not told from a second one but by the treatment it tries, whatever its capital letters', async () => {
    const { plantId } = await protocolOf(nursery);
    const body = () => ({
      protocolId: randomUUID(),
      versionId: randomUUID(),
      plantId,
      method: 'seed' as const,
      ...content(),
    });
    expect(await refusalOf(grower().addProtocol(sent(body())))).toMatchObject({
      code: 'protocol-exists',
      field: 'label',
      data: { method: 'seed', label: '', isRetired: false },
    });
    await grower().addProtocol(sent({ ...body(), label: 'Warm first' }));
    expect(await refusalOf(grower().addProtocol(sent({ ...body(), label: 'warm first' })))).toMatchObject({
      code: 'protocol-exists',
      data: { label: 'warm first' },
    });
  });

  it('of cuttings counts no seeds', async () => {
    const { plantId } = await protocolOf(nursery);
    const body = {
      protocolId: randomUUID(),
      versionId: randomUUID(),
      plantId,
      method: 'cutting' as const,
      ...content({ stages: [stage('sticking'), stage('rooting')], seedsPerCell: 2 }),
    };
    expect(await refusalOf(grower().addProtocol(sent(body)))).toEqual({
      code: 'seeds-for-seed-only',
      field: 'seedsPerCell',
      data: { method: 'cutting' },
    });
  });

  it('names containers of this nursery that its unit fits into', async () => {
    const { plantId } = await protocolOf(nursery);
    const flatId = await stockOf(nursery).addContainer({
      code: `flat-${randomUUID().slice(0, 6)}`,
      kind: 'flat',
      volumeMl: null,
    });
    const body = (more: object) => ({
      protocolId: randomUUID(),
      versionId: randomUUID(),
      plantId,
      method: 'seed' as const,
      label: 'c',
      ...content(more),
    });
    expect(await refusalOf(grower().addProtocol(sent(body({ startContainerId: flatId }))))).toMatchObject({
      code: 'container-not-for-unit',
      field: 'startContainerId',
      data: { fits: ['tray', 'pot'] },
    });
    expect(await refusalOf(grower().addProtocol(sent(body({ startContainerId: randomUUID() }))))).toMatchObject({
      code: 'not-found',
      field: 'startContainerId',
    });
    expect(await refusalOf(grower().addProtocol(sent(body({ targetContainerId: randomUUID() }))))).toMatchObject({
      code: 'not-found',
      field: 'targetContainerId',
    });
    expect(
      await refusalOf(
        grower().addProtocol(sent(body({ stages: [stage('emergence', { containerId: randomUUID() })] }))),
      ),
    ).toMatchObject({ code: 'not-found', field: 'stages.0.containerId' });
  });

  it('is of a plant that the nursery grows', async () => {
    const plantId = await stockOf(nursery).addPlant({ name: `Viola ${randomUUID().slice(0, 8)}`, code: randomCode() });
    await nursery.as('grower').plants.retirePlant(sent({ plantId }));
    for (const id of [plantId, randomUUID()]) {
      expect(
        await refusalOf(
          grower().addProtocol(
            sent({
              protocolId: randomUUID(),
              versionId: randomUUID(),
              plantId: id,
              method: 'seed' as const,
              ...content(),
            }),
          ),
        ),
      ).toMatchObject({ code: 'not-found', field: 'plantId' });
    }
  });

  it('takes no id that is taken', async () => {
    const taken = await protocolOf(nursery);
    const { plantId } = await protocolOf(nursery);
    const body = { plantId, method: 'seed' as const, label: 'd', ...content() };
    expect(
      await refusalOf(grower().addProtocol(sent({ ...body, protocolId: taken.protocolId, versionId: randomUUID() }))),
    ).toMatchObject({ code: 'id-taken', field: 'protocolId' });
    expect(
      await refusalOf(grower().addProtocol(sent({ ...body, protocolId: randomUUID(), versionId: taken.versionId }))),
    ).toMatchObject({ code: 'id-taken', field: 'versionId' });
  });
});

const randomCode = () =>
  [...randomUUID().replaceAll('-', '')]
    .slice(0, 4)
    .map((digit) => String.fromCharCode(65 + Number.parseInt(digit, 16)))
    .join('');
