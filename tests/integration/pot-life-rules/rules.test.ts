import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let plantId: string;
let containerId: string;
let lotId: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  const stock = stockOf(nursery);
  ({ plantId, containerId, lotId } = await stock.addReadyLot({ pottedOn: '2026-04-14' }));
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const potLife = () => nursery.as('grower').potLife;
const clockOf = async (id: string) =>
  (
    await nursery.sql<{
      plant_by_on: string | null;
      limit_on: string | null;
      rule_id: string | null;
      plant_by_state: string;
    }>('SELECT plant_by_on::text, limit_on::text, rule_id::text, plant_by_state FROM lot WHERE id = $1', [id])
  )[0];
const versionOf = async () =>
  (
    await nursery.sql<{ rules_version: number }>('SELECT rules_version::int FROM nursery WHERE id = $1', [
      nursery.nurseryId,
    ])
  )[0]?.rules_version ?? 0;

interface Rule {
  basis?: 'confined' | 'container' | 'no-winter';
  span?: string | null;
  reach?: object;
  winterCarry?: { maxDays: number; graceDays: number } | null;
  note?: string;
}
async function addRule({
  basis = 'confined',
  span = 'P1Y',
  reach = { genus: 'Asclepias' },
  winterCarry = null,
  note = '',
}: Rule = {}) {
  const ruleId = randomUUID();
  await potLife().addRule(sent({ ruleId, basis, span, reach, winterCarry, note }));
  return ruleId;
}
const retire = (ruleId: string) => potLife().retireRule(sent({ ruleId }));
async function withRule(rule: Rule, work: (ruleId: string) => Promise<void>) {
  const ruleId = await addRule(rule);
  await work(ruleId);
  await retire(ruleId);
}

describe('a rule', () => {
  test('that is added moves the plant-by day of an open lot, and retired lets it go again', async () => {
    const ruleId = await addRule();
    expect(await clockOf(lotId)).toEqual({
      plant_by_on: '2027-04-14',
      limit_on: '2027-04-14',
      rule_id: ruleId,
      plant_by_state: 'limit-only',
    });
    await retire(ruleId);
    expect(await clockOf(lotId)).toMatchObject({ plant_by_on: null, rule_id: null, plant_by_state: 'unlimited' });
  });

  test('that is changed moves the day and becomes the nursery’s own', () =>
    withRule({}, async (ruleId) => {
      await nursery.sql(`UPDATE pot_life_rule SET standing = 'common practice', source = 'somewhere' WHERE id = $1`, [
        ruleId,
      ]);
      await potLife().editRule(sent({ ruleId, span: 'P1Y', winterCarry: null, note: 'only a note' }));
      expect((await potLife().listRules({})).find(({ id }) => id === ruleId)).toMatchObject({
        standing: 'common practice',
        source: 'somewhere',
        note: 'only a note',
        binds: 1,
      });
      const before = await versionOf();
      await potLife().editRule(sent({ ruleId, span: 'P6M', winterCarry: null, note: 'sooner' }));
      expect((await potLife().listRules({})).find(({ id }) => id === ruleId)).toMatchObject({
        span: 'P6M',
        standing: 'own setting',
        source: null,
      });
      expect(await clockOf(lotId)).toMatchObject({ plant_by_on: '2026-10-14' });
      expect(await versionOf()).toBe(before + 1);
    }));

  test('of the more particular reach counts', () =>
    withRule({}, () =>
      withRule({ span: 'P9M', reach: { plantId } }, async (particular) => {
        expect(await clockOf(lotId)).toMatchObject({ limit_on: '2027-01-14', rule_id: particular });
        await withRule({ span: 'P3M', reach: { lotId } }, async (lotRule) => {
          expect(await clockOf(lotId)).toMatchObject({ limit_on: '2026-07-14', rule_id: lotRule });
        });
      }),
    ));

  test.each([
    ['a lot', () => ({ lotId }), 'lot'],
    ['a plant in a container', () => ({ plantId, containerId }), 'plant-container'],
    ['a plant', () => ({ plantId }), 'plant'],
    ['a genus', () => ({ genus: 'Lupinus' }), 'genus'],
    ['a root habit in a container', () => ({ rootHabit: 'woody', containerId }), 'root-habit-container'],
    ['a root habit', () => ({ rootHabit: 'tuber' }), 'root-habit'],
  ] as const)('may reach %s', (_, reach, name) =>
    withRule({ reach: reach() }, async (ruleId) => {
      expect((await potLife().listRules({})).find(({ id }) => id === ruleId)).toMatchObject({
        reach: name,
        standing: 'own setting',
      });
    }),
  );

  test.each([
    ['nothing', {}, 'reach'],
    ['a container by itself', { containerId: randomUUID() }, 'reach'],
    ['a plant and a genus', { plantId: randomUUID(), genus: 'Asclepias' }, 'reach'],
  ])('that reaches %s is refused', async (_, reach, field) => {
    expect(await refusalOf(addRule({ reach }))).toMatchObject({ code: 'invalid-input', field });
  });

  test.each([
    ['a span that is none', { span: 'one year' }, 'span'],
    ['a span of nothing', { span: 'P0D' }, 'span'],
    ['a span of hours', { span: 'PT12H' }, 'span'],
    ['no span', { span: null }, 'span'],
    ['a span though it forbids the winter', { basis: 'no-winter' as const, span: 'P1Y' }, 'span'],
    [
      'a winter carry though it forbids the winter',
      { basis: 'no-winter' as const, span: null, winterCarry: { maxDays: 100, graceDays: 10 } },
      'winterCarry',
    ],
    ['a carry of more than a year', { winterCarry: { maxDays: 400, graceDays: 10 } }, 'winterCarry.maxDays'],
    ['a carry of half a day', { winterCarry: { maxDays: 10.5, graceDays: 10 } }, 'winterCarry.maxDays'],
  ])('with %s is refused', async (_, rule, field) => {
    expect(await refusalOf(addRule({ ...rule, reach: { rootHabit: 'rhizome' } }))).toMatchObject({
      code: 'invalid-input',
      field,
    });
  });

  test('for a plant, container or lot that is not there is refused', async () => {
    const stranger = randomUUID();
    expect(await refusalOf(addRule({ reach: { plantId: stranger } }))).toMatchObject({
      code: 'not-found',
      field: 'reach.plantId',
    });
    expect(await refusalOf(addRule({ reach: { plantId, containerId: stranger } }))).toMatchObject({
      code: 'not-found',
      field: 'reach.containerId',
    });
    expect(await refusalOf(addRule({ reach: { lotId: stranger } }))).toMatchObject({
      code: 'not-found',
      field: 'reach.lotId',
    });
  });

  test('for the same plants as another of its basis is refused', () =>
    withRule({}, async (ruleId) => {
      expect(await refusalOf(addRule({ span: 'P2Y', reach: { genus: 'asclepias' } }))).toMatchObject({
        code: 'rule-exists',
        data: { ruleId },
      });
      await withRule({ basis: 'container', span: 'P2Y' }, async () => undefined);
    }));

  test('cannot be changed into one that makes no sense, nor when it is retired or not there', () =>
    withRule({ reach: { rootHabit: 'tuber' } }, async (ruleId) => {
      const edit = (id: string, span: string | null) =>
        refusalOf(potLife().editRule(sent({ ruleId: id, span, winterCarry: null, note: '' })));
      expect(await edit(ruleId, null)).toMatchObject({ code: 'invalid-input', field: 'span' });
      expect(await edit(randomUUID(), 'P1Y')).toMatchObject({ code: 'not-found', field: 'ruleId' });
      const gone = await addRule({ reach: { rootHabit: 'fibrous' } });
      await retire(gone);
      expect(await edit(gone, 'P1Y')).toMatchObject({ code: 'rule-retired' });
      expect(await refusalOf(retire(gone))).toMatchObject({ code: 'rule-retired' });
    }));

  test.each(['crew', 'viewer'] as const)('is not for a %s to add', async (role) => {
    expect(
      await refusalOf(
        nursery.as(role).potLife.addRule(
          sent({
            ruleId: randomUUID(),
            basis: 'confined',
            span: 'P1Y',
            reach: { genus: 'Asclepias' },
            winterCarry: null,
          }),
        ),
      ),
    ).toMatchObject({ code: 'not-allowed' });
  });

  test('of another nursery is neither seen nor changed', () =>
    withRule({}, async (ruleId) => {
      const other = await openNursery(database);
      try {
        expect(await other.as('grower').potLife.listRules({})).toEqual([]);
        expect(await refusalOf(other.as('grower').potLife.retireRule(sent({ ruleId })))).toMatchObject({
          code: 'not-found',
        });
      } finally {
        await other.close();
      }
    }));

  test('leaves a closed lot as it was', () =>
    withRule({}, async () => {
      const stock = stockOf(nursery);
      const gone = await stock.addReadyLot({ pottedOn: '2026-04-14', units: 5 });
      await nursery.sql(`UPDATE lot SET closed_on = '2026-05-01', plant_by_on = '2026-09-09' WHERE id = $1`, [
        gone.lotId,
      ]);
      await withRule({ span: 'P4M', reach: { plantId: gone.plantId } }, async () => {
        expect(await clockOf(gone.lotId)).toMatchObject({ plant_by_on: '2026-09-09' });
      });
    }));
});
