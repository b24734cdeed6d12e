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
const find = (text: string) => nursery.as('viewer').plants.findPlant({ text });
const idOf = async (name: string) => {
  const { match } = await find(name);
  if (match.kind === 'ambiguous' || match.kind === 'unknown') throw new Error(`${name} should be one plant here`);
  return match.plant.id;
};
const add = (plantId: string, kind: 'synonym' | 'common', name: string, nameId: string = randomUUID()) =>
  plants().addPlantName(sent({ nameId, plantId, kind, name }));

describe('a written name', () => {
  test.each([
    ['Asclepias tuberosa', 'exact', 'Asclepias tuberosa'],
    ['asclepias  TUBEROSA', 'exact', 'Asclepias tuberosa'],
    ['Asclepias tuberosa Linnaeus', 'exact', 'Asclepias tuberosa'],
    ['ASCLEPIAS tuberosa L.', 'exact', 'Asclepias tuberosa'],
    ['Asclepiodora viridis', 'synonym', 'Asclepias viridis'],
    ['Asclepiodora viridis (Walter) A. Gray', 'synonym', 'Asclepias viridis'],
    ['showy milkweed', 'common', 'Asclepias speciosa'],
  ])('%j is an %s name of one plant', async (text, kind, scientificName) => {
    expect((await find(text)).match).toMatchObject({ kind, plant: { scientificName } });
  });

  test.each(['milkweed', 'Butterfly Weed', 'Asclepias', 'asclepias sp.'])(
    '%j of several plants is never guessed',
    async (text) => {
      const { match } = await find(text);
      const named = match.kind === 'ambiguous' ? match.plants.map(({ scientificName }) => scientificName) : [];
      expect(named.length).toBeGreaterThan(1);
      expect(named).toEqual([...named].sort());
      expect(named).toContain('Asclepias tuberosa');
    },
  );

  test('misspelt is unknown, with what comes near', async () => {
    const { match, suggestions } = await find('Asclepias tubrosa');
    expect(match).toMatchObject({ kind: 'unknown', nearMisses: [{ plant: { scientificName: 'Asclepias tuberosa' } }] });
    expect(suggestions).toEqual([]);
  });

  test.each(['??', 'x', '%', '_', 'a'.repeat(160)])('of no plant (%j) is unknown and harms nothing', async (text) => {
    expect((await find(text)).match.kind).toBe('unknown');
  });

  test('that is empty is refused', async () => {
    expect(await refusalOf(find('   '))).toMatchObject({ code: 'invalid-input', field: 'text' });
  });

  test('that has only begun offers at most twelve plants, those whose name begins so first', async () => {
    const { suggestions } = await find('a');
    expect(suggestions).toHaveLength(12);
    expect((await find('butterfl')).suggestions.map(({ plant }) => plant.scientificName)).toContain(
      'Asclepias tuberosa',
    );
    const inner = (await find('tuber')).suggestions;
    expect(inner[0]).toMatchObject({ name: 'Asclepias tuberosa', kind: 'scientific' });
    expect(new Set(suggestions.map(({ plant }) => plant.id)).size).toBe(12);
  });

  test('of another nursery’s plant is unknown here', async () => {
    const other = await openNursery(database);
    try {
      expect((await other.as('viewer').plants.findPlant({ text: 'Asclepias tuberosa' })).match).toEqual({
        kind: 'unknown',
        nearMisses: [],
      });
    } finally {
      await other.close();
    }
  });
});

describe('another name', () => {
  test('may be other plants’ too, and the answer says which', async () => {
    const plantId = await idOf('Liatris aspera');
    const answer = await add(plantId, 'common', 'butterfly weed');
    expect(answer.alsoMeans.map(({ scientificName }) => scientificName)).toContain('Asclepias tuberosa');
    const page = await plants().readPlant({ plantId });
    expect(
      page.names.find(({ name }) => name === 'butterfly weed')?.alsoMeans.map(({ scientificName }) => scientificName),
    ).toContain('Asclepias tuberosa');
    expect(page.names.find(({ name }) => name === 'butterfly weed')).toMatchObject({ standing: 'own setting' });
  });

  test('that the plant has already is refused, in any spelling', async () => {
    const plantId = await idOf('Asclepias speciosa');
    expect(await refusalOf(add(plantId, 'common', 'Showy  Milk-weed'.replace('Milk-weed', 'milkweed')))).toMatchObject({
      code: 'name-taken',
      field: 'name',
    });
    expect(await refusalOf(add(plantId, 'synonym', 'Asclepias speciosa Torr.'))).toMatchObject({ code: 'name-taken' });
  });

  test('cannot be a synonym when it is another plant’s accepted name', async () => {
    expect(await refusalOf(add(await idOf('Asclepias speciosa'), 'synonym', 'Asclepias tuberosa'))).toMatchObject({
      code: 'plant-exists',
    });
  });

  test('cannot be a synonym when it is no scientific name', async () => {
    expect(await refusalOf(add(await idOf('Asclepias speciosa'), 'synonym', 'silkweed'))).toMatchObject({
      code: 'invalid-input',
      field: 'name',
    });
  });

  test('without a letter is refused', async () => {
    expect(await refusalOf(add(await idOf('Asclepias speciosa'), 'common', '??'))).toMatchObject({
      code: 'invalid-input',
      field: 'name',
    });
  });

  test('of a plant that is not there is refused', async () => {
    expect(await refusalOf(add(randomUUID(), 'common', 'ghost flower'))).toMatchObject({
      code: 'not-found',
      field: 'plantId',
    });
  });

  test('under an id that is taken is refused', async () => {
    const nameId = randomUUID();
    const plantId = await idOf('Asclepias speciosa');
    await add(plantId, 'common', 'silver milkweed', nameId);
    expect(await refusalOf(add(plantId, 'common', 'grey milkweed', nameId))).toMatchObject({ code: 'id-taken' });
  });

  test('taken away leaves the plant with one of the others', async () => {
    const plantId = randomUUID();
    await plants().addPlant(
      sent({ plantId, scientificName: 'Solidago nemoralis', rootHabit: 'fibrous', vernacularName: 'gray goldenrod' }),
    );
    await add(plantId, 'common', 'old-field goldenrod');
    const first = (await plants().readPlant({ plantId })).names.find(({ name }) => name === 'gray goldenrod');
    await plants().removePlantName(sent({ nameId: first!.id }));
    expect(await plants().readPlant({ plantId })).toMatchObject({
      vernacularName: 'old-field goldenrod',
      names: [{ name: 'old-field goldenrod' }],
    });
  });

  test('that is the accepted one cannot be taken away, nor one that is not there', async () => {
    const [accepted] = await nursery.sql<{ id: string }>(
      `SELECT id FROM plant_name WHERE nursery_id = $1 AND kind = 'scientific' LIMIT 1`,
      [nursery.nurseryId],
    );
    const removing = (nameId: string) => refusalOf(plants().removePlantName(sent({ nameId })));
    expect(await removing(accepted!.id)).toMatchObject({ code: 'not-found', field: 'nameId' });
    expect(await removing(randomUUID())).toEqual(await removing(accepted!.id));
  });

  test.each(['crew', 'viewer'] as const)('is not for a %s to add', async (role) => {
    const adding = nursery
      .as(role)
      .plants.addPlantName(sent({ nameId: randomUUID(), plantId: randomUUID(), kind: 'common', name: 'anything' }));
    expect(await refusalOf(adding)).toMatchObject({ code: 'not-allowed' });
  });
});
