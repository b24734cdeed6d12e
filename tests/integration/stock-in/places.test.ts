import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

type Body = Parameters<ReturnType<TestNursery['as']>['stock']['addPlace']>[0]['body'];
let nth = 0;
const body = (fields: Partial<Body> = {}): Body => ({
  placeId: randomUUID(),
  code: `P${++nth}`,
  kind: 'bench',
  ...fields,
});
const add = async (fields: Partial<Body> = {}) => {
  const place = body(fields);
  await nursery.as().stock.addPlace(sent(place));
  return place;
};
const tree = () => nursery.as('viewer').stock.listPlaces({});
const read = (placeId: string) => nursery.as('viewer').stock.readPlace({ placeId });
const close = (placeId: string, untilAt: string, reason = 'sprayed') =>
  nursery.as('crew').stock.closePlace(sent({ placeId, untilAt, reason }));
const lotAt = async (placeId: string, units = 12) => {
  const { plantId, containerId, sourceId } = await stock.addReadyLot();
  return stock.addLot({ plantId, containerId, sourceId, placeId, units });
};

describe('adding a place', () => {
  test('keeps its kind, where it lies and whether it shelters from the winter', async () => {
    const house = await add({ kind: 'house', winterCover: true, name: 'North house' });
    const bench = await add({ parentId: house.placeId });
    expect(await read(bench.placeId)).toMatchObject({
      code: bench.code,
      name: bench.code,
      kind: 'bench',
      winterCover: false,
      path: [{ placeId: house.placeId, code: house.code }],
    });
  });

  test('refuses a code in use, whatever its case', async () => {
    const { code } = await add({ code: 'yard A' });
    expect(await refusalOf(add({ code: 'YARD a' }))).toMatchObject({ code: 'code-taken', field: 'code' });
    expect(code).toBe('yard A');
  });

  test('refuses an empty code', async () => {
    expect(await refusalOf(add({ code: '  ' }))).toMatchObject({ code: 'invalid-input', field: 'code' });
  });

  test('answers a parent of another nursery as not found', async () => {
    const other = await openNursery(database);
    const theirs = await stockOf(other).addPlace();
    expect(await refusalOf(add({ parentId: theirs }))).toMatchObject({ code: 'not-found', field: 'parentId' });
    await other.close();
  });

  test('refuses a parent that is given up', async () => {
    const old = await add();
    await nursery.as().stock.retirePlace(sent({ placeId: old.placeId }));
    expect(await refusalOf(add({ parentId: old.placeId }))).toMatchObject({ code: 'place-retired', field: 'parentId' });
  });
});

describe('editing a place', () => {
  test('refuses to lay it into what lies in it', async () => {
    const house = await add({ kind: 'house' });
    const bay = await add({ kind: 'bay', parentId: house.placeId });
    const edit = nursery
      .as()
      .stock.editPlace(sent({ placeId: house.placeId, code: house.code, kind: 'house', parentId: bay.placeId }));
    expect(await refusalOf(edit)).toMatchObject({ code: 'place-in-itself', field: 'parentId' });
  });

  test('keeps its own code', async () => {
    const { placeId, code } = await add();
    await nursery.as().stock.editPlace(sent({ placeId, code, kind: 'yard' }));
    expect((await read(placeId)).kind).toBe('yard');
  });

  test('reckons the clocks anew of what stands there when it gets a winter cover', async () => {
    const { placeId, code } = await add();
    const lotId = await lotAt(placeId);
    await nursery.sql(
      `INSERT INTO pot_life_rule (nursery_id, id, basis, lot_id, standing) VALUES ($1, $2, 'no-winter', $3, 'own setting')`,
      [nursery.nurseryId, randomUUID(), lotId],
    );
    const dayOf = async () =>
      (await nursery.sql<{ day: string | null }>('SELECT plant_by_on::text AS day FROM lot WHERE id = $1', [lotId]))[0]
        ?.day;
    await nursery.as().stock.editPlace(sent({ placeId, code, kind: 'bench', winterCover: true }));
    expect(await dayOf()).toBeNull();
    await nursery.as().stock.editPlace(sent({ placeId, code, kind: 'bench', winterCover: false }));
    expect(await dayOf()).toBe('2026-11-15');
  });

  test('refuses to make a bench of a bed in whose ground plants grow', async () => {
    const { placeId, code } = await add({ kind: 'nursery-bed' });
    const { plantId, sourceId } = await stock.addReadyLot();
    const ground = await stock.addContainer({ code: `ground-${code}`, kind: 'ground', volumeMl: null });
    await stock.addLot({ plantId, sourceId, containerId: ground, placeId, units: 30 });
    expect(await refusalOf(nursery.as().stock.editPlace(sent({ placeId, code, kind: 'bench' })))).toMatchObject({
      code: 'place-not-empty',
      field: 'kind',
      data: { units: 30 },
    });
  });
});

describe('giving a place up', () => {
  test('is refused while plants stand there, with their number', async () => {
    const { placeId, code } = await add();
    await lotAt(placeId, 12);
    await lotAt(placeId, 5);
    expect(await refusalOf(nursery.as().stock.retirePlace(sent({ placeId })))).toEqual({
      code: 'place-not-empty',
      field: 'placeId',
      data: { place: code, units: 17, lots: 2, batches: 0 },
    });
  });

  test('is refused while other places lie in it', async () => {
    const house = await add({ kind: 'house' });
    await add({ parentId: house.placeId });
    expect(await refusalOf(nursery.as().stock.retirePlace(sent({ placeId: house.placeId })))).toMatchObject({
      code: 'place-has-places',
      data: { places: 1 },
    });
  });

  test('takes it from the tree, and can be taken back', async () => {
    const { placeId } = await add();
    await nursery.as().stock.retirePlace(sent({ placeId }));
    expect((await tree()).some((row) => row.placeId === placeId)).toBe(false);
    await nursery.as().stock.restorePlace(sent({ placeId }));
    expect((await tree()).some((row) => row.placeId === placeId)).toBe(true);
  });

  test('cannot be taken back before that of the place in which it lies', async () => {
    const house = await add({ kind: 'house' });
    const bench = await add({ parentId: house.placeId });
    await nursery.as().stock.retirePlace(sent({ placeId: bench.placeId }));
    await nursery.as().stock.retirePlace(sent({ placeId: house.placeId }));
    expect(await refusalOf(nursery.as().stock.restorePlace(sent({ placeId: bench.placeId })))).toMatchObject({
      code: 'place-retired',
      data: { place: house.code },
    });
  });

  test.each(['retirePlace', 'restorePlace', 'readPlace'] as const)(
    'answers a place of another nursery as not found: %s',
    async (verb) => {
      const other = await openNursery(database);
      const placeId = await stockOf(other).addPlace();
      const answer = verb === 'readPlace' ? read(placeId) : nursery.as().stock[verb](sent({ placeId }));
      expect(await refusalOf(answer)).toMatchObject({ code: 'not-found', field: 'placeId' });
      await other.close();
    },
  );
});

describe('closing a place', () => {
  test('closes all that lies in it, and says by which place', async () => {
    const house = await add({ kind: 'house' });
    const bench = await add({ parentId: house.placeId });
    await close(house.placeId, '2026-05-21T12:00:00Z', 'fumigated');
    expect(await read(bench.placeId)).toMatchObject({
      closedUntilAt: '2026-05-21T12:00:00.000Z',
      closedReason: 'fumigated',
      closedBy: { placeId: house.placeId },
    });
  });

  test('ends by itself when its time has come', async () => {
    const { placeId } = await add();
    await close(placeId, '2026-05-20T17:30:00Z');
    nursery.clock.set('2026-05-20T17:30:00Z');
    expect((await read(placeId)).closedBy).toBeNull();
    nursery.clock.set('2026-05-20');
  });

  test('is told in the story of the place, with who did it and why', async () => {
    const { placeId } = await add();
    await close(placeId, '2026-05-22T12:00:00Z', 'stop of the inspector');
    await nursery
      .as('owner')
      .stock.openPlace(sent({ placeId, reason: 'letter of release', edition: (await read(placeId)).edition }));
    const { events, closedBy } = await read(placeId);
    expect(closedBy).toBeNull();
    expect(events.map(({ kind, note, person, untilAt }) => ({ kind, note, person, untilAt }))).toEqual([
      { kind: 'opened', note: 'letter of release', person: 'Test owner', untilAt: null },
      { kind: 'closed', note: 'stop of the inspector', person: 'Test crew', untilAt: '2026-05-22T12:00:00.000Z' },
    ]);
  });

  test('may be made longer but not shorter', async () => {
    const { placeId } = await add();
    await close(placeId, '2026-05-22T12:00:00Z');
    expect(await refusalOf(close(placeId, '2026-05-21T12:00:00Z'))).toMatchObject({
      code: 'closed-for-longer',
      field: 'untilAt',
      data: { until: '2026-05-22T12:00:00.000Z' },
    });
    await close(placeId, '2026-05-23T12:00:00Z');
    expect((await read(placeId)).closedUntilAt).toBe('2026-05-23T12:00:00.000Z');
  });

  test('refuses a time that is over', async () => {
    const { placeId } = await add();
    expect(await refusalOf(close(placeId, '2026-05-20T16:59:00Z'))).toMatchObject({
      code: 'closing-is-past',
      field: 'untilAt',
    });
  });

  test('refuses a place that is given up', async () => {
    const { placeId } = await add();
    await nursery.as().stock.retirePlace(sent({ placeId }));
    expect((await refusalOf(close(placeId, '2026-05-22T12:00:00Z'))).code).toBe('place-retired');
  });

  test('cannot be opened where it is not closed', async () => {
    const { placeId, code } = await add();
    expect(await refusalOf(nursery.as().stock.openPlace(sent({ placeId, reason: 'none' })))).toMatchObject({
      code: 'place-not-closed',
      data: { place: code },
    });
  });

  test('is for the crew to do, and not to undo', async () => {
    const { placeId } = await add();
    await close(placeId, '2026-05-22T12:00:00Z');
    expect((await refusalOf(nursery.as('crew').stock.openPlace(sent({ placeId, reason: 'mine' })))).code).toBe(
      'not-allowed',
    );
  });
});

describe('the tree of places', () => {
  test('counts what stands at each and in all that lies in it', async () => {
    const house = await add({ kind: 'house' });
    const bench = await add({ parentId: house.placeId });
    await lotAt(bench.placeId, 8);
    await lotAt(house.placeId, 3);
    const rows = await tree();
    expect(rows.find((row) => row.placeId === house.placeId)).toMatchObject({
      depth: 0,
      lots: 1,
      units: 3,
      unitsWithin: 11,
    });
    expect(rows.find((row) => row.placeId === bench.placeId)).toMatchObject({
      depth: 1,
      lots: 1,
      units: 8,
      unitsWithin: 8,
    });
  });

  test('puts what lies in a place below it, and B2 before B10', async () => {
    const yard = await add({ kind: 'yard' });
    await add({ parentId: yard.placeId, code: `${yard.code}-B10` });
    await add({ parentId: yard.placeId, code: `${yard.code}-B2` });
    const codes = (await tree()).map((row) => row.code).filter((code) => code.startsWith(yard.code));
    expect(codes).toEqual([yard.code, `${yard.code}-B2`, `${yard.code}-B10`]);
  });
});
