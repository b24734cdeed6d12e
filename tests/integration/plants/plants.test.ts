import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

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

const grower = () => nursery.as('grower');
const page = (plantId: string) => grower().plants.readPlant({ plantId });

async function addPlant(scientificName: string, more: object = {}) {
  const plantId = randomUUID();
  const { code } = await grower().plants.addPlant(
    sent({ plantId, scientificName, rootHabit: 'taproot' as const, ...more }),
  );
  return { plantId, code };
}

describe('adding a plant', () => {
  test('takes its name apart and gives it a code', async () => {
    const { plantId, code } = await addPlant('Boltonia asteroides L.', {
      vernacularName: 'false aster',
      family: 'Asteraceae',
    });
    expect(code).toBe('BOAS');
    expect(await page(plantId)).toMatchObject({
      scientificName: 'Boltonia asteroides',
      scientificNameAuthorship: 'L.',
      taxonRank: 'species',
      vernacularName: 'false aster',
      names: [{ kind: 'common', name: 'false aster' }],
    });
  });

  test('lets a letter settle a clash of codes', async () => {
    await addPlant('Verbena stricta');
    expect((await addPlant('Vernonia stellata')).code).toBe('VESTA');
  });

  test('marks all that was said as the nursery’s own', async () => {
    const { plantId } = await addPlant('Amorpha canescens', {
      dormantMonths: [11, 12, 1, 2, 3],
      handling: ['may-divide'],
    });
    const { facts } = await page(plantId);
    expect(facts.map(({ standing }) => standing)).toEqual(facts.map(() => 'own setting'));
    expect(facts.map(({ field }) => field)).toEqual(
      expect.arrayContaining(['dormantMonths', 'handling.may-divide', 'rootHabit']),
    );
  });

  test.each([
    ['the accepted name', 'Ratibida pinnata'],
    ['that name with its author', 'Ratibida pinnata (Vent.) Barnhart'],
    ['that name with other spaces', ' Ratibida  pinnata '],
  ])('refuses %s of a plant that is there', async (_, name) => {
    await addPlant('Ratibida pinnata').catch(() => undefined);
    expect(await refusalOf(addPlant(name))).toMatchObject({
      code: 'plant-exists',
      field: 'scientificName',
      data: { plant: 'Ratibida pinnata', isRetired: false },
    });
  });

  test('refuses a synonym of a plant that is there', async () => {
    const { plantId } = await addPlant('Symphyotrichum ericoides');
    await grower().plants.addPlantName(
      sent({ nameId: randomUUID(), plantId, kind: 'synonym', name: 'Aster ericoides L.' }),
    );
    expect(await refusalOf(addPlant('Aster ericoides'))).toMatchObject({
      code: 'name-is-synonym',
      data: { plant: 'Symphyotrichum ericoides' },
    });
  });

  test.each([
    ['a common name in place of a scientific one', { scientificName: 'compass plant' }, 'scientificName'],
    [
      'a plant that never grows',
      { scientificName: 'Baptisia alba', dormantMonths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] },
      'dormantMonths',
    ],
    ['a thirteenth month', { scientificName: 'Baptisia alba', dormantMonths: [13] }, 'dormantMonths.0'],
    [
      'a last-emergence day that does not exist',
      { scientificName: 'Baptisia alba', lastEmergenceMd: '06-31' },
      'lastEmergenceMd',
    ],
    ['an unknown root habit', { scientificName: 'Baptisia alba', rootHabit: 'aerial' }, 'rootHabit'],
    ['an unknown handling rule', { scientificName: 'Baptisia alba', handling: ['sing-to-it'] }, 'handling.0'],
  ])('refuses %s', async (_, { scientificName, ...more }, field) => {
    expect(await refusalOf(addPlant(scientificName, more))).toMatchObject({ code: 'invalid-input', field });
  });

  test('refuses a code and an id that are taken', async () => {
    const { plantId } = await addPlant('Dalea purpurea');
    expect(await refusalOf(addPlant('Dalea candida', { code: 'DAPU' }))).toMatchObject({
      code: 'code-taken',
      field: 'code',
    });
    expect(await refusalOf(addPlant('Dalea candida', { plantId }))).toMatchObject({ code: 'id-taken' });
  });

  test.each(['crew', 'viewer'] as const)('is not for a %s', async (role) => {
    const adding = nursery
      .as(role)
      .plants.addPlant(sent({ plantId: randomUUID(), scientificName: 'Phlox pilosa', rootHabit: 'fibrous' }));
    expect(await refusalOf(adding)).toMatchObject({ code: 'not-allowed' });
  });
});

describe('editing a plant', () => {
  test('changes what is given and leaves the rest on the word it stood on', async () => {
    const { match } = await grower().plants.findPlant({ text: 'Liatris aspera' });
    const plantId = match.kind === 'exact' ? match.plant.id : '';
    const before = await page(plantId);
    await grower().plants.editPlant(sent({ plantId, yearOfFirstBloom: 4, lastEmergenceMd: before.lastEmergenceMd }));
    const after = await page(plantId);
    expect(after.facts.find(({ field }) => field === 'yearOfFirstBloom')).toMatchObject({
      value: 4,
      standing: 'own setting',
      source: null,
    });
    expect(after.facts.find(({ field }) => field === 'lastEmergenceMd')).toEqual(
      before.facts.find(({ field }) => field === 'lastEmergenceMd'),
    );
  });

  test('keeps the old name as a synonym when it is renamed', async () => {
    const { plantId, code } = await addPlant('Aster sericeus Vent.');
    await grower().plants.editPlant(sent({ plantId, scientificName: 'Symphyotrichum sericeum (Vent.) G.L. Nesom' }));
    expect(await page(plantId)).toMatchObject({
      code,
      scientificName: 'Symphyotrichum sericeum',
      names: [{ kind: 'synonym', name: 'Aster sericeus Vent.' }],
    });
    expect((await grower().plants.findPlant({ text: 'Aster sericeus' })).match).toMatchObject({
      kind: 'synonym',
      plant: { id: plantId },
    });
  });

  test('takes a handling rule away', async () => {
    const { plantId } = await addPlant('Zizia aptera', { handling: ['wear-gloves', 'plant-shallow'] });
    await grower().plants.editPlant(sent({ plantId, handling: ['plant-shallow'] }));
    const { handling, facts } = await page(plantId);
    expect(handling).toEqual(['plant-shallow']);
    expect(facts.find(({ field }) => field === 'handling.wear-gloves')).toMatchObject({ value: false });
  });

  test('refuses the name of another plant and a plant that is not there', async () => {
    const { plantId } = await addPlant('Eryngium yuccifolium');
    await addPlant('Veronicastrum virginicum');
    expect(
      await refusalOf(grower().plants.editPlant(sent({ plantId, scientificName: 'Veronicastrum virginicum' }))),
    ).toMatchObject({ code: 'plant-exists' });
    expect(
      await refusalOf(grower().plants.editPlant(sent({ plantId: randomUUID(), yearOfFirstBloom: 2 }))),
    ).toMatchObject({ code: 'not-found', field: 'plantId' });
  });

  test('moves the plant-by days of what stands in pots when its roots are of another kind', async () => {
    const stock = stockOf(nursery);
    const { plantId } = await addPlant('Tradescantia ohiensis', { rootHabit: 'fibrous' });
    const container = (await grower().plants.listContainers({})).find(({ code }) => code === 'tall-1l');
    const lotId = await stock.addLot({
      plantId,
      containerId: container!.id,
      placeId: await stock.addPlace(),
      sourceId: await stock.addSource(plantId),
      pottedOn: '2026-04-14',
    });
    const limit = async () =>
      (await nursery.sql<{ limit_on: string }>('SELECT limit_on::text FROM lot WHERE id = $1', [lotId]))[0]?.limit_on;
    await grower().plants.editPlant(sent({ plantId, family: 'Commelinaceae' }));
    expect(await limit()).toBe('2028-04-14');
    await grower().plants.editPlant(sent({ plantId, rootHabit: 'taproot' }));
    expect(await limit()).toBe('2027-04-14');
  });
});

describe('retiring a plant', () => {
  test('takes it out of the list and the finding, and back again', async () => {
    const { plantId } = await addPlant('Penstemon cobaea');
    await grower().plants.retirePlant(sent({ plantId }));
    expect((await grower().plants.findPlant({ text: 'Penstemon cobaea' })).match.kind).toBe('unknown');
    expect(
      (await grower().plants.listPlants({ retired: true, text: 'Penstemon cobaea' })).rows.map(({ id }) => id),
    ).toEqual([plantId]);
    expect(await refusalOf(addPlant('Penstemon cobaea'))).toMatchObject({
      code: 'plant-exists',
      data: { isRetired: true },
    });
    await grower().plants.restorePlant(sent({ plantId }));
    expect((await grower().plants.findPlant({ text: 'Penstemon cobaea' })).match.kind).toBe('exact');
  });

  test('is refused while units of it stand here', async () => {
    const { plantId } = await stockOf(nursery).addReadyLot({ units: 17 });
    expect(await refusalOf(grower().plants.retirePlant(sent({ plantId })))).toMatchObject({
      code: 'plant-stands',
      data: { units: 17 },
    });
  });
});

describe('a fact', () => {
  test('said by the nursery replaces what was printed', async () => {
    const { plantId } = await addPlant('Lespedeza capitata');
    await grower().plants.setPlantFact(
      sent({ plantId, field: 'stratificationDays', value: [10, 21], source: 'our own trays', note: '' }),
    );
    expect((await page(plantId)).facts).toContainEqual({
      field: 'stratificationDays',
      edition: expect.any(Number),
      value: [10, 21],
      standing: 'own setting',
      source: 'our own trays',
      note: null,
    });
  });

  test('of seeds by the gram says them by the pound too', async () => {
    const { plantId } = await addPlant('Lespedeza virginica');
    await grower().plants.setPlantFact(sent({ plantId, field: 'seedsPerGram', value: 350 }));
    expect((await page(plantId)).facts).toContainEqual(
      expect.objectContaining({ field: 'seedsPerPound', value: 158_757, standing: 'derived' }),
    );
  });

  test('may be that nothing is known', async () => {
    const { plantId } = await addPlant('Lespedeza procumbens');
    await grower().plants.setPlantFact(sent({ plantId, field: 'sun', value: null }));
    expect((await page(plantId)).facts).toContainEqual(expect.objectContaining({ field: 'sun', value: null }));
  });

  test.each([
    ['a range the wrong way round', 'germinationPercent', [90, 20]],
    ['a share above one hundred', 'germinationPercent', [20, 101]],
    ['a text in place of a range', 'heightCm', 'tall'],
    ['a field that clocks reason with', 'rootHabit', 'woody'],
    ['a field that is none', 'horoscope', 'leo'],
  ])('that is %s is refused', async (_, field, value) => {
    const plantId = (await grower().plants.listPlants({ perPage: 1 })).rows[0]?.id ?? '';
    expect(await refusalOf(grower().plants.setPlantFact(sent({ plantId, field, value } as never)))).toMatchObject({
      code: 'invalid-input',
    });
  });

  test('of a plant that is not there is refused', async () => {
    expect(
      await refusalOf(grower().plants.setPlantFact(sent({ plantId: randomUUID(), field: 'sun', value: 'full sun' }))),
    ).toMatchObject({ code: 'not-found', field: 'plantId' });
  });
});

describe('the list of plants', () => {
  test('finds by any name and by code, filters, and tells the total of all pages', async () => {
    const found = await grower().plants.listPlants({ text: 'false as' });
    expect(found).toMatchObject({ total: 1, rows: [{ scientificName: 'Boltonia asteroides' }] });
    expect((await grower().plants.listPlants({ text: 'boas' })).rows[0]?.code).toBe('BOAS');
    const woody = await grower().plants.listPlants({ rootHabit: 'woody', perPage: 200 });
    expect(new Set(woody.rows.map(({ rootHabit }) => rootHabit))).toEqual(new Set(['woody']));
    const { total } = await grower().plants.listPlants({});
    expect(await grower().plants.listPlants({ page: 999, perPage: 10 })).toMatchObject({ rows: [], total });
  });

  test('counts what stands in pots', async () => {
    const { plantId } = await stockOf(nursery).addReadyLot({ units: 23 });
    const { rows } = await grower().plants.listPlants({ sort: 'units', descending: true, perPage: 200 });
    expect(rows.find(({ id }) => id === plantId)).toMatchObject({ units: 23, lots: 1 });
    expect(rows.map(({ units }) => units)).toEqual(rows.map(({ units }) => units).sort((a, b) => b - a));
    expect((await page(plantId)).standing).toMatchObject([{ lots: 1, units: 23, reserved: 0 }]);
  });

  test('of another nursery is unknown here', async () => {
    const other = await openNursery(database);
    try {
      const { plantId } = await stockOf(other).addReadyLot();
      expect(await refusalOf(page(plantId))).toEqual(await refusalOf(page(randomUUID())));
      expect(await refusalOf(grower().plants.retirePlant(sent({ plantId })))).toMatchObject({
        code: 'not-found',
        field: 'plantId',
      });
    } finally {
      await other.close();
    }
  });
});
