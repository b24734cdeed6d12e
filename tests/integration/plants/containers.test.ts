import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.as('owner').plants.loadReference(sent({}));
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const plants = () => nursery.as('grower').plants;
const pot = {
  name: 'own pot',
  kind: 'pot' as const,
  volumeMl: 700,
  depthMm: 150,
  widthMm: 90,
  lengthMm: 90,
  cells: null,
  tradeClass: null,
  note: '',
};
async function addContainer(code: string, more: object = {}) {
  const containerId = randomUUID();
  await plants().addContainer(sent({ containerId, code, ...pot, ...more }));
  return containerId;
}
const byCode = async (code: string, retired = false) =>
  (await plants().listContainers({ retired })).find((container) => container.code === code);

describe('a container', () => {
  test('of the nursery’s own stands beside those of the reference', async () => {
    await addContainer('own-700');
    expect(await byCode('own-700')).toMatchObject({ ...pot, standing: 'own setting', inUse: 0 });
  });

  test('measured by the nursery is its own, renamed it stands on the word it stood on', async () => {
    const {
      id,
      isRetired: _,
      inUse: __,
      code: ___,
      kind: ____,
      standing: _____,
      source: ______,
      edition,
      ...measures
    } = (await byCode('tall-1l'))!;
    const renamed = await plants().editContainer(sent({ containerId: id, ...measures, edition, name: 'tall litre' }));
    expect(await byCode('tall-1l')).toMatchObject({ name: 'tall litre', standing: 'assumed' });
    await plants().editContainer(
      sent({ containerId: id, ...measures, edition: renamed.edition, name: 'tall litre', volumeMl: 940 }),
    );
    expect(await byCode('tall-1l')).toMatchObject({ volumeMl: 940, standing: 'own setting' });
  });

  test('retired is no longer offered, and comes back', async () => {
    const containerId = await addContainer('gone-soon');
    await plants().retireContainer(sent({ containerId }));
    expect(await byCode('gone-soon')).toBeUndefined();
    expect(await byCode('gone-soon', true)).toMatchObject({ isRetired: true });
    await plants().restoreContainer(sent({ containerId }));
    expect(await byCode('gone-soon')).toMatchObject({ isRetired: false });
  });

  test.each([
    ['a code that is taken', 'tall-1l', {}, 'code-taken', 'code'],
    ['a code in capitals', 'TALL', {}, 'invalid-input', 'code'],
    ['a volume of nothing', 'empty', { volumeMl: 0 }, 'invalid-input', 'volumeMl'],
    ['half a millimetre', 'half', { depthMm: 0.5 }, 'invalid-input', 'depthMm'],
    ['a tray without cells', 'no-cells', { kind: 'tray' }, 'tray-needs-cells', 'cells'],
    ['a pot with cells', 'cells', { cells: 12 }, 'cells-need-tray', 'cells'],
  ])('with %s is refused', async (_, code, more, expected, field) => {
    expect(await refusalOf(addContainer(code, more))).toMatchObject({ code: expected, field });
  });

  test('that is not there cannot be changed or retired', async () => {
    const containerId = randomUUID();
    const { kind: _, ...measures } = pot;
    const refusals = [
      await refusalOf(plants().editContainer(sent({ containerId, ...measures }))),
      await refusalOf(plants().retireContainer(sent({ containerId }))),
      await refusalOf(plants().restoreContainer(sent({ containerId }))),
    ];
    expect(refusals.map(({ code, field }) => [code, field])).toEqual([
      ['not-found', 'containerId'],
      ['not-found', 'containerId'],
      ['not-found', 'containerId'],
    ]);
  });

  test.each(['crew', 'viewer'] as const)('is not for a %s to add', async (role) => {
    expect(
      await refusalOf(nursery.as(role).plants.addContainer(sent({ containerId: randomUUID(), code: 'x1', ...pot }))),
    ).toMatchObject({ code: 'not-allowed' });
  });
});

describe('the regions', () => {
  test('are those of the reference and any that a plant names', async () => {
    await plants().addPlant(
      sent({ plantId: randomUUID(), scientificName: 'Ipomopsis rubra', rootHabit: 'taproot', nativeRegions: ['TX'] }),
    );
    const codes = (await plants().listRegions({})).map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['WI', 'MN', 'TX']));
  });
});
