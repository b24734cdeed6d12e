import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  referenceContainers,
  referencePlants,
  referenceRules,
  referenceSettings,
  referenceWindows,
} from '../../../apps/server/src/reference/index.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await createDatabase();
});
afterAll(() => database.drop());

async function inNursery(work: (nursery: TestNursery) => Promise<void>) {
  const nursery = await openNursery(database);
  try {
    await work(nursery);
  } finally {
    await nursery.close();
  }
}
const countOf = async ({ sql, nurseryId }: TestNursery, table: string) =>
  (await sql<{ n: number }>(`SELECT count(*)::int AS n FROM ${table} WHERE nursery_id = $1`, [nurseryId]))[0]?.n;

describe('the reference data', () => {
  test('fills a new nursery completely', () =>
    inNursery(async (nursery) => {
      const answer = await nursery.as('owner').plants.loadReference(sent({}));
      expect(answer).toEqual({
        plants: referencePlants.length,
        containers: referenceContainers.length,
        rules: referenceRules.length,
        windows: referenceWindows.length,
      });
      expect(await countOf(nursery, 'plant')).toBe(referencePlants.length);
      expect(await countOf(nursery, 'plant_name')).toBe(
        referencePlants.reduce((sum, plant) => sum + 1 + plant.synonyms.length + plant.commonNames.length, 0),
      );
      expect(await countOf(nursery, 'plant_fact')).toBe(
        referencePlants.reduce((sum, plant) => sum + 1 + Object.keys(plant.facts).length + plant.handling.length, 0),
      );
      const [settings] = await nursery.sql(
        'SELECT freeze_md, freeze_standing, notice_days FROM nursery WHERE id = $1',
        [nursery.nurseryId],
      );
      expect(settings).toEqual({
        freeze_md: referenceSettings.freezeMd.value,
        freeze_standing: 'assumed',
        notice_days: referenceSettings.noticeDays.value,
      });
    }));

  test('keeps the standing, source and note of every value', () =>
    inNursery(async (nursery) => {
      await nursery.as('owner').plants.loadReference(sent({}));
      const { match } = await nursery.as('viewer').plants.findPlant({ text: 'Asclepias tuberosa' });
      const page = await nursery
        .as('viewer')
        .plants.readPlant({ plantId: match.kind === 'exact' ? match.plant.id : '' });
      const reference = referencePlants.find(({ code }) => code === 'ASTU');
      for (const [field, { value, standing, source, note }] of Object.entries(reference?.facts ?? {})) {
        expect(page.facts).toContainEqual(
          expect.objectContaining({ field, value, standing, source, note: note ?? null }),
        );
      }
      expect(page.facts).toContainEqual(
        expect.objectContaining({ field: 'handling.leave-root-ball-intact', standing: 'common practice' }),
      );
    }));

  test('loaded again adds nothing and changes nothing', () =>
    inNursery(async (nursery) => {
      await nursery.as('owner').plants.loadReference(sent({}));
      expect(await nursery.as('owner').plants.loadReference(sent({}))).toEqual({
        plants: 0,
        containers: 0,
        rules: 0,
        windows: 0,
      });
    }));

  test('loaded again leaves what the nursery changed, took away or retired', () =>
    inNursery(async (nursery) => {
      const owner = nursery.as('owner');
      await owner.plants.loadReference(sent({}));
      const { match } = await owner.plants.findPlant({ text: 'Asclepias tuberosa' });
      const plantId = match.kind === 'exact' ? match.plant.id : '';
      await owner.plants.editPlant(sent({ plantId, yearOfFirstBloom: 2 }));
      await owner.plants.setPlantFact(sent({ plantId, field: 'sun', value: 'half shade will do' }));
      const name = (await owner.plants.readPlant({ plantId })).names.find((each) => each.name === 'milkweed');
      await owner.plants.removePlantName(sent({ nameId: name!.id }));
      await nursery.sql(`UPDATE nursery SET freeze_md = '11-01' WHERE id = $1`, [nursery.nurseryId]);
      await owner.plants.loadReference(sent({}));
      const page = await owner.plants.readPlant({ plantId });
      expect(page.yearOfFirstBloom).toBe(2);
      expect(page.facts.find(({ field }) => field === 'sun')).toMatchObject({
        value: 'half shade will do',
        standing: 'own setting',
      });
      expect(page.names.map((each) => each.name)).not.toContain('milkweed');
      expect(await nursery.sql('SELECT freeze_md FROM nursery WHERE id = $1', [nursery.nurseryId])).toEqual([
        { freeze_md: '11-01' },
      ]);
    }));

  test('leaves a plant of the nursery’s own as it is and finds another code where one is taken', () =>
    inNursery(async (nursery) => {
      const owner = nursery.as('owner');
      const ownId = crypto.randomUUID();
      await owner.plants.addPlant(
        sent({ plantId: ownId, scientificName: 'Asclepias tuberosa L.', rootHabit: 'woody' }),
      );
      await owner.plants.addPlant(
        sent({ plantId: crypto.randomUUID(), scientificName: 'Liatris aspidium', code: 'LIAS', rootHabit: 'tuber' }),
      );
      expect(await owner.plants.loadReference(sent({}))).toMatchObject({ plants: referencePlants.length - 1 });
      const { match } = await owner.plants.findPlant({ text: 'Asclepias tuberosa' });
      expect(match).toMatchObject({ kind: 'exact', plant: { id: ownId, rootHabit: 'woody' } });
      const codes = await nursery.sql<{ code: string; scientific_name: string }>(
        `SELECT code, scientific_name FROM plant WHERE nursery_id = $1 AND code LIKE 'LIAS%' ORDER BY code`,
        [nursery.nurseryId],
      );
      expect(codes).toEqual([
        { code: 'LIAS', scientific_name: 'Liatris aspidium' },
        { code: 'LIASA', scientific_name: 'Liatris aspera' },
      ]);
    }));

  test('gives two nurseries rows of their own', async () => {
    await inNursery(async (first) => {
      await first.as('owner').plants.loadReference(sent({}));
      await inNursery(async (second) => {
        await second.as('owner').plants.loadReference(sent({}));
        expect(await countOf(second, 'plant')).toBe(await countOf(first, 'plant'));
      });
    });
  });

  test.each(['grower', 'crew', 'viewer'] as const)('is loaded by owners and not by a %s', (role) =>
    inNursery(async (nursery) => {
      expect(await refusalOf(nursery.as(role).plants.loadReference(sent({})))).toMatchObject({ code: 'not-allowed' });
    }),
  );
});
