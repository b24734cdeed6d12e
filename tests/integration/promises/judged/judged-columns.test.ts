import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { readFreshPlan } from '../../../support/fresh-plan.ts';
import { gardenStory } from '../../../support/gardens.ts';
import { openServer } from '../../../support/nursery.ts';
import { batchEdits } from './batch-edits.ts';
import { COVERED, readJudgedColumns, VIEW_COLUMNS } from './columns.ts';
import { orderEdits } from './order-edits.ts';
import { sourceEdits } from './source-edits.ts';
import { stockEdits } from './stock-edits.ts';

const EDITS = { ...stockEdits, ...sourceEdits, ...batchEdits, ...orderEdits };

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

describe('what judging rests on', () => {
  it('is known column by column', async () => {
    const { views, stored } = await readJudgedColumns(server);
    expect(views).toEqual(
      Object.fromEntries(
        Object.entries(VIEW_COLUMNS).map(([name, { decides, named }]) => [name, [...decides, ...named].sort()]),
      ),
    );
    expect(stored).toEqual(Object.keys(COVERED).sort());
  });

  it('is edited below, or has a reason why it cannot be', () => {
    expect(
      Object.entries(COVERED).filter(
        ([, how]) => Array.isArray(how) && (how.length === 0 || how.some((name) => !(name in EDITS))),
      ),
    ).toEqual([]);
  });

  it.each(Object.keys(EDITS))('is planned anew after an edit: %s', async (name) => {
    const nursery = { ...(await server.addNursery()), close: async () => {} };
    const edits = (await EDITS[name]?.(nursery, await gardenStory(nursery))) ?? [];
    let { stored: before, fresh: first } = await readFreshPlan(nursery);
    expect(before).toEqual(first);
    for (const [at, edit] of edits.entries()) {
      await edit();
      const { stored, fresh } = await readFreshPlan(nursery);
      expect({ edit: at, stored }).toEqual({ edit: at, stored: fresh });
      expect({ edit: at, changed: JSON.stringify(fresh) !== JSON.stringify(before) }).toEqual({
        edit: at,
        changed: true,
      });
      before = stored;
    }
    expect(edits.length).toBeGreaterThan(0);
  });
});
