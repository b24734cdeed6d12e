import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let lotId: string;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  ({ lotId } = await stockOf(nursery).addReadyLot({ pottedOn: '2026-04-14' }));
  await nursery
    .as('owner')
    .potLife.addRule(
      sent({ ruleId: randomUUID(), basis: 'confined', span: 'P1Y', reach: { genus: 'Asclepias' }, winterCarry: null }),
    );
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const potLife = () => nursery.as('grower').potLife;
const clock = async () =>
  (
    await nursery.sql<{ plant_by_on: string; plant_by_state: string }>(
      'SELECT plant_by_on::text, plant_by_state FROM lot WHERE id = $1',
      [lotId],
    )
  )[0];
const terms = { opensMd: '04-15', closesMd: '06-15', maxContainerMl: null, region: null, note: '' };
async function addWindow(more: object = {}) {
  const windowId = randomUUID();
  await potLife().addWindow(sent({ windowId, ...terms, ...more }));
  return windowId;
}
async function withWindows(windows: object[], work: (ids: string[]) => Promise<void>) {
  const ids: string[] = [];
  for (const window of windows) ids.push(await addWindow(window));
  await work(ids);
  for (const { id } of (await potLife().listWindows({})).windows) await potLife().retireWindow(sent({ windowId: id }));
}

describe('a planting window', () => {
  test('pulls the plant-by day back to its last day, and lets it go when it is retired', () =>
    withWindows([{}, { opensMd: '09-01', closesMd: '10-15' }], async ([, autumn]) => {
      expect(await clock()).toEqual({ plant_by_on: '2026-10-15', plant_by_state: 'window' });
      await potLife().retireWindow(sent({ windowId: autumn ?? '' }));
      expect(await clock()).toEqual({ plant_by_on: '2026-06-15', plant_by_state: 'window' });
    }));

  test('that is changed moves the day and becomes the nursery’s own', () =>
    withWindows([{}], async ([windowId = '']) => {
      await nursery.sql(`UPDATE planting_window SET standing = 'assumed' WHERE id = $1`, [windowId]);
      await potLife().editWindow(sent({ windowId, ...terms, note: 'a note' }));
      expect((await potLife().listWindows({})).windows[0]).toMatchObject({ note: 'a note', standing: 'assumed' });
      await potLife().editWindow(sent({ windowId, ...terms, closesMd: '06-20' }));
      expect((await potLife().listWindows({})).windows[0]).toMatchObject({
        closesMd: '06-20',
        standing: 'own setting',
      });
      expect(await clock()).toMatchObject({ plant_by_on: '2026-06-20' });
    }));

  test('for smaller containers alone leaves a litre pot without a window', () =>
    withWindows([{ maxContainerMl: 60 }], async () => {
      expect(await clock()).toEqual({ plant_by_on: '2027-04-14', plant_by_state: 'limit-only' });
    }));

  test.each([
    ['a day that does not exist', { opensMd: '02-30' }, 'invalid-input', 'opensMd'],
    ['a date in place of a day of the year', { closesMd: '2026-06-15' }, 'invalid-input', 'closesMd'],
    ['a container of nothing', { maxContainerMl: 0 }, 'invalid-input', 'maxContainerMl'],
    ['a region without a name', { region: ' ' }, 'invalid-input', 'region'],
  ])('with %s is refused', async (_, more, code, field) => {
    expect(await refusalOf(addWindow(more))).toMatchObject({ code, field });
  });

  test('that is there already is refused, added or changed', () =>
    withWindows([{}, { opensMd: '09-01', closesMd: '10-15' }], async ([, autumn = '']) => {
      expect(await refusalOf(addWindow())).toMatchObject({
        code: 'window-exists',
        data: { opensMd: '04-15', closesMd: '06-15' },
      });
      expect(await refusalOf(potLife().editWindow(sent({ windowId: autumn, ...terms })))).toMatchObject({
        code: 'window-exists',
      });
    }));

  test('that is retired or not there cannot be changed', () =>
    withWindows([{}], async ([windowId = '']) => {
      expect(await refusalOf(potLife().editWindow(sent({ windowId: randomUUID(), ...terms })))).toMatchObject({
        code: 'not-found',
        field: 'windowId',
      });
      await potLife().retireWindow(sent({ windowId }));
      expect(await refusalOf(potLife().retireWindow(sent({ windowId })))).toMatchObject({ code: 'window-retired' });
      await addWindow({ opensMd: '05-01' });
    }));

  test.each(['crew', 'viewer'] as const)('is not for a %s to add', async (role) => {
    expect(
      await refusalOf(nursery.as(role).potLife.addWindow(sent({ windowId: randomUUID(), ...terms }))),
    ).toMatchObject({ code: 'not-allowed' });
  });
});

describe('the freeze day', () => {
  test('binds what may not stand through winter', async () => {
    const plant = (
      await nursery.sql<{ plant_id: string; container_id: string }>(
        'SELECT plant_id, container_id FROM lot WHERE id = $1',
        [lotId],
      )
    )[0]!;
    const ruleId = randomUUID();
    await potLife().addRule(
      sent({
        ruleId,
        basis: 'no-winter',
        span: null,
        reach: { plantId: plant.plant_id, containerId: plant.container_id },
        winterCarry: null,
      }),
    );
    expect(await clock()).toMatchObject({ plant_by_on: '2026-11-15' });
    await potLife().setFreezeDay(sent({ freezeMd: '10-20' }));
    expect(await clock()).toMatchObject({ plant_by_on: '2026-10-20' });
    expect(await potLife().listWindows({})).toMatchObject({ freezeMd: '10-20', freezeStanding: 'own setting' });
    await potLife().retireRule(sent({ ruleId }));
  });

  test('that does not exist is refused', async () => {
    expect(await refusalOf(potLife().setFreezeDay(sent({ freezeMd: '11-31' })))).toMatchObject({
      code: 'invalid-input',
      field: 'freezeMd',
    });
  });
});

describe('asking what a change would do', () => {
  test('tells how many days would move and which, and writes nothing', async () => {
    const stock = stockOf(nursery);
    const other = await stock.addReadyLot({ pottedOn: '2025-06-01' });
    const [rule] = await potLife().listRules({});
    const before = await nursery.sql('SELECT id, plant_by_on, rule_id FROM lot ORDER BY id');
    const [version] = await nursery.sql('SELECT version, rules_version FROM nursery WHERE id = $1', [
      nursery.nurseryId,
    ]);
    // The second lot has not been reckoned yet: the next command that changes rules does it.
    await potLife().editRule(sent({ ruleId: rule!.id, span: 'P1Y', winterCarry: null, note: 'reckon anew' }));
    expect(before).toHaveLength(2);
    const preview = await nursery.as('viewer').potLife.previewChange({
      change: { command: 'editRule', body: { ruleId: rule!.id, span: 'P11M', winterCarry: null, note: '' } },
    });
    expect(preview).toMatchObject({ open: 2, earlier: 2, later: 0, nowPast: 1 });
    expect(preview.examples.map(({ id, fromOn, toOn }) => ({ id, fromOn, toOn }))).toEqual(
      expect.arrayContaining([
        { id: lotId, fromOn: '2027-04-14', toOn: '2027-03-14' },
        { id: other.lotId, fromOn: '2026-06-01', toOn: '2026-05-01' },
      ]),
    );
    const [after] = await nursery.sql('SELECT version, rules_version FROM nursery WHERE id = $1', [nursery.nurseryId]);
    expect([after?.version, after?.rules_version].map(Number)).toEqual([
      Number(version?.version) + 1,
      Number(version?.rules_version) + 1,
    ]);
    expect(await clock()).toMatchObject({ plant_by_on: '2027-04-14' });
  });

  test.each([
    [
      'a window',
      { command: 'addWindow' as const, body: { windowId: randomUUID(), ...terms } },
      { earlier: 1, later: 0 },
    ],
    ['the freeze day', { command: 'setFreezeDay' as const, body: { freezeMd: '09-30' } }, { earlier: 0, later: 0 }],
  ])('knows %s', async (_, change, expected) => {
    expect(await potLife().previewChange({ change })).toMatchObject({ open: 2, ...expected });
  });

  test('equals what the command then does', async () => {
    const change = { windowId: randomUUID(), ...terms, opensMd: '09-01', closesMd: '10-15' };
    const { examples } = await potLife().previewChange({ change: { command: 'addWindow', body: change } });
    await potLife().addWindow(sent(change));
    const stored = await nursery.sql<{ id: string; toOn: string }>(
      'SELECT id, plant_by_on::text AS "toOn" FROM lot WHERE id = ANY ($1::uuid[]) ORDER BY id',
      [examples.map(({ id }) => id)],
    );
    expect(stored).toEqual(examples.map(({ id, toOn }) => ({ id, toOn })).sort((a, b) => (a.id < b.id ? -1 : 1)));
  });

  test('refuses what the command would refuse', async () => {
    const ask = (change: Parameters<ReturnType<typeof potLife>['previewChange']>[0]['change']) =>
      refusalOf(potLife().previewChange({ change }));
    expect(await ask({ command: 'retireRule', body: { ruleId: randomUUID() } })).toMatchObject({
      code: 'not-found',
      field: 'ruleId',
    });
    expect(await ask({ command: 'retireWindow', body: { windowId: randomUUID() } })).toMatchObject({
      code: 'not-found',
      field: 'windowId',
    });
    expect(
      await ask({
        command: 'addRule',
        body: { ruleId: randomUUID(), basis: 'confined', span: 'P1Y', reach: {}, winterCarry: null },
      }),
    ).toMatchObject({ code: 'invalid-input', field: 'reach' });
  });
});
