import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let bigId: string;
beforeAll(async () => {
  database = await createDatabase();
});
beforeEach(async () => {
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  bigId = await story.addContainer({ code: 'tall-4l', volumeMl: 4000 });
  await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
  await nursery.as('grower').clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'IA' }));
  return () => nursery.close();
});
afterAll(() => database.drop());

const by = () => nursery.as('grower');
type Kind = 'another-size' | 'same-genus' | 'same-habit';
async function addRule(kind: Kind, penalty: number, reach: { plantId?: string; genus?: string } = {}) {
  const ruleId = randomUUID();
  await by().orders.addSubstitutionRule(sent({ ruleId, kind, reach, penalty }));
  return ruleId;
}
const listed = async () =>
  (await nursery.as('viewer').orders.listSubstitutionRules({})).map(
    ({ kind, penalty, plants, untoldPlants, standing }) => ({ kind, penalty, plants, untoldPlants, standing }),
  );
const offered = (more: object = {}) =>
  nursery
    .as('viewer')
    .orders.alternativesFor({ plantId: story.plantId, containerId: story.containerId, siteId: story.siteId, ...more });
const shortly = async (more: object = {}) =>
  (await offered(more)).alternatives.map(
    ({ scientificName, containerName, penalty }) => `${scientificName}, ${containerName}: ${penalty}`,
  );
async function plantOf(name: string, code: string, nativeRegions: string[]) {
  const plantId = await story.addPlant({ name, code, larvalHost: false });
  await nursery.sql('UPDATE plant SET native_regions = $3 WHERE nursery_id = $1 AND id = $2', [
    nursery.nurseryId,
    plantId,
    nativeRegions,
  ]);
  return plantId;
}
async function tell(
  plantId: string,
  { heightCm = [60, 90] as [number, number], sun = 'full sun', bloomMonths = [6, 7] } = {},
) {
  const { setPlantFact } = nursery.as('grower').plants;
  await setPlantFact(sent({ plantId, field: 'heightCm', value: heightCm }));
  await setPlantFact(sent({ plantId, field: 'sun', value: sun }));
  await setPlantFact(sent({ plantId, field: 'bloomMonths', value: bloomMonths }));
}

describe('the rules of a nursery', () => {
  it('are added, changed and retired, each an own setting', async () => {
    const ruleId = await addRule('another-size', 2);
    expect(await listed()).toEqual([
      { kind: 'another-size', penalty: 2, plants: 1, untoldPlants: 0, standing: 'own setting' },
    ]);
    await by().orders.editSubstitutionRule(sent({ ruleId, penalty: 5, note: 'costs a trip' }));
    expect(await listed()).toMatchObject([{ penalty: 5 }]);
    await by().orders.retireSubstitutionRule(sent({ ruleId }));
    expect(await listed()).toEqual([]);
    expect(await refusalOf(by().orders.editSubstitutionRule(sent({ ruleId, penalty: 3 })))).toMatchObject({
      code: 'rule-retired',
    });
    expect(await refusalOf(by().orders.retireSubstitutionRule(sent({ ruleId })))).toMatchObject({
      code: 'rule-retired',
    });
  });

  it('do not contradict each other: the same kind for the same plants is there once, until it is retired', async () => {
    const ruleId = await addRule('same-genus', 2, { genus: 'Asclepias' });
    expect(await refusalOf(addRule('same-genus', 9, { genus: 'asclepias' }))).toMatchObject({
      code: 'rule-exists',
      data: { ruleId },
    });
    await addRule('same-genus', 3);
    await addRule('another-size', 3, { genus: 'Asclepias' });
    await by().orders.retireSubstitutionRule(sent({ ruleId }));
    await addRule('same-genus', 9, { genus: 'Asclepias' });
    expect(await listed()).toHaveLength(3);
  });

  it('reach one plant or a genus, not both, and a plant that is there', async () => {
    expect(await refusalOf(addRule('another-size', 2, { plantId: story.plantId, genus: 'Asclepias' }))).toMatchObject({
      code: 'invalid-input',
      field: 'reach',
    });
    expect(await refusalOf(addRule('another-size', 2, { plantId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'reach.plantId',
    });
  });

  it('of the same habit say for how many plants nobody has told height, light and bloom', async () => {
    await addRule('same-habit', 6);
    const other = await plantOf('Liatris aspera', 'LIAS', ['IA']);
    expect(await listed()).toMatchObject([{ plants: 2, untoldPlants: 2 }]);
    await tell(other);
    expect(await listed()).toMatchObject([{ plants: 2, untoldPlants: 1 }]);
  });
});

describe('while a line is typed', () => {
  it('another size of the plant is offered where some of it stands or grows, in a pot as the one asked for', async () => {
    const trayId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
    await story.addContainer({ code: 'pot-9cm', volumeMl: 400 });
    await story.addLot({ units: 9, containerId: bigId });
    await story.addLot({ units: 50, containerId: trayId });
    expect((await offered()).hasRules).toBe(false);
    await addRule('another-size', 2);
    expect((await offered()).hasRules).toBe(true);
    expect(await shortly()).toEqual(['Asclepias tuberosa, tall-4l: 2']);
  });

  it('another plant of the genus is offered when it is native to the region of the site, whatever its common name', async () => {
    for (const [name, code, regions] of [
      ['Asclepias verticillata', 'ASVE', ['IA']],
      ['Asclepias speciosa', 'ASSP', ['ND']],
      ['Asclepias curassavica', 'ASCU', []],
    ] as const) {
      await story.addLot({ units: 5, plantId: await plantOf(name, code, [...regions]) });
    }
    await nursery.sql(`UPDATE plant SET vernacular_name = 'milkweed' WHERE nursery_id = $1`, [nursery.nurseryId]);
    await addRule('same-genus', 3, { genus: 'Asclepias' });
    expect(await shortly()).toEqual(['Asclepias verticillata, tall-1l: 3']);
    expect((await offered()).notNative).toEqual(['Asclepias curassavica', 'Asclepias speciosa']);
    expect(await offered({ siteId: null })).toMatchObject({
      alternatives: [],
      idle: [{ kind: 'same-genus', why: 'no-region' }],
    });
  });

  it('another plant of the same height, light and season is offered with what it shares, and only a native one where natives are asked for', async () => {
    const native = await plantOf('Coreopsis palmata', 'COPA', ['IA']);
    const foreign = await plantOf('Zinnia elegans', 'ZIEL', []);
    const untold = await plantOf('Lupinus perennis', 'LUPE', ['IA']);
    for (const plantId of [native, foreign, untold]) await story.addLot({ units: 5, plantId });
    await addRule('same-habit', 6);
    expect(await offered()).toMatchObject({
      alternatives: [],
      idle: [{ kind: 'same-habit', why: 'untold', untold: ['height', 'light', 'bloom'] }],
    });
    for (const plantId of [story.plantId, native, foreign]) await tell(plantId);
    const { alternatives, ...rest } = await offered();
    expect(alternatives).toMatchObject([
      {
        scientificName: 'Coreopsis palmata',
        native: true,
        onHandUnits: 5,
        growingUnits: 0,
        shared: { heightClass: 'medium', lights: ['full-sun'], bloomMonths: [6, 7] },
      },
      { scientificName: 'Zinnia elegans', native: false },
    ]);
    expect(rest).toMatchObject({ idle: [], untold: ['Lupinus perennis'], notNative: [] });
    expect(await shortly({ nativesOnly: true })).toEqual(['Coreopsis palmata, tall-1l: 6']);
  });

  it('what is taken becomes an ordinary alternative, which fills the line and stays when the rule goes', async () => {
    const lotId = await story.addLot({ units: 9, containerId: bigId });
    const ruleId = await addRule('another-size', 7);
    const alternatives = (await offered()).alternatives.map(({ plantId, containerId, penalty }) => ({
      plantId,
      containerId,
      penalty,
    }));
    const { orderId, lineId } = await story.order([{ units: 4, alternatives }]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 4 });
    await by().orders.retireSubstitutionRule(sent({ ruleId }));
    expect((await story.lineOf(orderId, lineId)).alternatives).toMatchObject([
      { containerCode: 'tall-4l', penalty: 7 },
    ]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 4 });
  });

  it('what nobody here has is not found', async () => {
    expect(await refusalOf(offered({ plantId: randomUUID() }))).toMatchObject({ code: 'not-found', field: 'plantId' });
    expect(await refusalOf(offered({ containerId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'containerId',
    });
    expect(await refusalOf(offered({ siteId: randomUUID() }))).toMatchObject({ code: 'not-found', field: 'siteId' });
  });
});

it('a rule is never deleted', async () => {
  await addRule('another-size', 2);
  await expect(nursery.sql('DELETE FROM substitution_rule WHERE nursery_id = $1', [nursery.nurseryId])).rejects.toThrow(
    /never deleted/,
  );
});
