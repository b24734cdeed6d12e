import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Pick<TestNursery, 'nurseryId' | 'sql' | 'as'>;
let item: { plantId: string; containerId: string };
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-11-20' });
  nursery = await server.addNursery();
  const stock = stockOf(nursery);
  item = { plantId: await stock.addPlant(), containerId: await stock.addContainer() };
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const id = randomUUID;
const listed = async (input: Parameters<ReturnType<typeof nursery.as>['planning']['listExpectedDemand']>[0] = {}) =>
  (await nursery.as('viewer').planning.listExpectedDemand(input)).rows;
const add = async (more: { wanted?: string; units?: number; unitValueMinor?: number | null; note?: string } = {}) => {
  const demandId = id();
  const answer = await nursery
    .as('grower')
    .planning.addExpectedDemand(sent({ demandId, ...item, wanted: '2027-spring', units: 120, ...more }));
  return { ...answer, row: (await listed({ state: 'all' })).find((row) => row.demandId === demandId) };
};

describe('what is expected', () => {
  it('is kept by the first day of its season', async () => {
    const { wantedOn, row } = await add({ unitValueMinor: 650, note: 'the spring market' });
    expect(wantedOn).toBe('2027-03-01');
    expect(row).toMatchObject({
      ...item,
      wantedOn: '2027-03-01',
      units: 120,
      unitValueMinor: 650,
      note: 'the spring market',
      scientificName: 'Asclepias tuberosa',
      containerCode: 'tall-1l',
      isPast: false,
    });
  });
  it('is wanted from today where its season has begun', async () =>
    expect((await add({ wanted: '2026-autumn' })).wantedOn).toBe('2026-11-20'));
  it('is kept by its day where one is named', async () =>
    expect((await add({ wanted: '2027-05-12' })).wantedOn).toBe('2027-05-12'));
  it('is refused beside the day where its season is over', async () => {
    expect(await refusalOf(add({ wanted: '2026-summer' }))).toEqual({
      code: 'wanted-day-past',
      data: { day: '2026-08-31', today: '2026-11-20' },
      field: 'wanted',
    });
  });
  it('is refused beside the units where there are none', async () => {
    const { code, field } = await refusalOf(add({ units: 0 }));
    expect([code, field]).toEqual(['invalid-input', 'units']);
  });
  it('is refused for a plant that is not there', async () => {
    expect(
      await refusalOf(
        nursery
          .as('grower')
          .planning.addExpectedDemand(sent({ demandId: id(), ...item, plantId: id(), wanted: '2027', units: 1 })),
      ),
    ).toMatchObject({ code: 'not-found', field: 'plantId' });
  });
  it('is refused for a container that is not there', async () => {
    expect(
      await refusalOf(
        nursery
          .as('grower')
          .planning.addExpectedDemand(sent({ demandId: id(), ...item, containerId: id(), wanted: '2027', units: 1 })),
      ),
    ).toMatchObject({ code: 'not-found', field: 'containerId' });
  });
  it('is refused under an id that is taken', async () => {
    const { demandId } = await add();
    expect(
      await refusalOf(
        nursery.as('grower').planning.addExpectedDemand(sent({ demandId, ...item, wanted: '2027', units: 1 })),
      ),
    ).toMatchObject({ code: 'id-taken' });
  });
});

describe('mending what is expected', () => {
  it('changes all of it', async () => {
    const { demandId } = await add();
    await nursery
      .as('owner')
      .planning.editExpectedDemand(
        sent({ demandId, ...item, wanted: '2027-autumn', units: 7, unitValueMinor: null, note: 'fewer' }),
      );
    expect((await listed()).find((row) => row.demandId === demandId)).toMatchObject({
      wantedOn: '2027-09-01',
      units: 7,
      unitValueMinor: null,
      note: 'fewer',
    });
  });
  it('may keep a day that has passed since', async () => {
    const { demandId } = await add({ wanted: '2026-11-25' });
    server.clock.set('2026-12-01');
    await nursery.as('grower').planning.editExpectedDemand(sent({ demandId, ...item, wanted: '2026-11-25', units: 9 }));
    expect((await listed({ state: 'past' })).map((row) => row.demandId)).toContain(demandId);
    expect((await listed()).map((row) => row.demandId)).not.toContain(demandId);
    server.clock.set('2026-11-20');
  });
  it('is refused for what is not there', async () => {
    expect(
      await refusalOf(
        nursery.as('grower').planning.editExpectedDemand(sent({ demandId: id(), ...item, wanted: '2027', units: 1 })),
      ),
    ).toMatchObject({ code: 'not-found', field: 'demandId' });
  });
});

describe('withdrawing what is expected', () => {
  it('takes it out of the list and cannot be done twice', async () => {
    const { demandId } = await add();
    await nursery.as('grower').planning.withdrawExpectedDemand(sent({ demandId }));
    expect((await listed({ state: 'all' })).map((row) => row.demandId)).not.toContain(demandId);
    expect(await refusalOf(nursery.as('grower').planning.withdrawExpectedDemand(sent({ demandId })))).toMatchObject({
      code: 'demand-withdrawn',
      field: 'demandId',
    });
    expect(
      await refusalOf(
        nursery.as('grower').planning.editExpectedDemand(sent({ demandId, ...item, wanted: '2027', units: 1 })),
      ),
    ).toMatchObject({ code: 'demand-withdrawn' });
  });
});

it('the list is narrowed by plant and day', async () => {
  const plantId = await stockOf(nursery).addPlant({ name: 'Liatris aspera', code: 'LIAS' });
  const demandId = id();
  await nursery
    .as('grower')
    .planning.addExpectedDemand(sent({ demandId, ...item, plantId, wanted: '2027-06-01', units: 5 }));
  expect((await listed({ plantId })).map((row) => row.demandId)).toEqual([demandId]);
  expect(await listed({ plantId, wantedFrom: '2027-06-02' })).toEqual([]);
  expect(await listed({ plantId, wantedTo: '2027-05-31' })).toEqual([]);
});

it.each(['crew', 'viewer'] as const)('a %s may read but not write it', async (role) => {
  expect(
    await refusalOf(
      nursery.as(role).planning.addExpectedDemand(sent({ demandId: id(), ...item, wanted: '2027', units: 1 })),
    ),
  ).toMatchObject({ code: 'not-allowed' });
  expect((await nursery.as(role).planning.listExpectedDemand({})).rows.length).toBeGreaterThan(0);
});
