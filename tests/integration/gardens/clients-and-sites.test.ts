import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('clients, sites and beds', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    return () => nursery.close();
  });
  afterAll(() => database.drop());
  const as = (role: 'owner' | 'grower' | 'crew' | 'viewer' = 'grower') => nursery.as(role);

  it('are found by name, with what is open for them', async () => {
    await as().clients.addClient(sent({ clientId: randomUUID(), name: 'Alder Lane', email: 'alder@example.test' }));
    await story.order([{ units: 3 }], { dueOn: '2026-06-01' });
    const all = await as('viewer').gardens.listClients({});
    expect(all.rows).toMatchObject([
      { name: 'Alder Lane', openOrders: 0, nextDueOn: null, sites: 0, onlySiteId: null },
      { name: 'Fen Hollow', openOrders: 1, nextDueOn: '2026-06-01', sites: 1, onlySiteId: story.siteId },
    ]);
    expect((await as('viewer').gardens.listClients({ search: 'hollow' })).rows.map(({ name }) => name)).toEqual([
      'Fen Hollow',
    ]);
    expect((await as('viewer').gardens.listClients({ search: '%' })).rows).toEqual([]);
  });

  it('are changed as a whole', async () => {
    await as().clients.editClient(
      sent({
        clientId: story.clientId,
        name: 'Fen Hollow Farm',
        phone: '555 0100',
        leadDays: 3,
        note: 'Gate code by phone.',
      }),
    );
    await as().clients.editSite(
      sent({ siteId: story.siteId, name: 'North slope', address: '1 Fen Road', region: 'WI', livestockNear: true }),
    );
    const bedId = randomUUID();
    await as().clients.addBed(sent({ bedId, siteId: story.siteId, name: 'By the gate' }));
    await as().clients.editBed(
      sent({ bedId, name: 'By the well', areaCm2: 60_000, sun: 'part-sun' as const, moisture: 'moist' as const }),
    );
    const client = await as('viewer').gardens.readClient({ clientId: story.clientId });
    expect(client).toMatchObject({
      name: 'Fen Hollow Farm',
      phone: '555 0100',
      email: null,
      leadDays: 3,
      note: 'Gate code by phone.',
    });
    expect(client.siteRows).toEqual([
      {
        edition: expect.any(Number),
        id: story.siteId,
        clientId: story.clientId,
        clientName: 'Fen Hollow Farm',
        name: 'North slope',
        address: '1 Fen Road',
        region: 'WI',
        livestockNear: true,
        note: '',
        beds: [
          {
            id: bedId,
            edition: expect.any(Number),
            siteId: story.siteId,
            name: 'By the well',
            areaCm2: 60_000,
            sun: 'part-sun',
            moisture: 'moist',
            note: '',
            plantedUnits: 0,
          },
        ],
      },
    ]);
  });

  it('lose all that is personal when it is asked for, and keep what was planted', async () => {
    const lotId = await story.addLot({ units: 10 });
    await as().clients.editSite(
      sent({ siteId: story.siteId, name: 'South slope', address: '1 Fen Road', note: 'Beware of the dog.' }),
    );
    const { orderId, lineId } = await story.order([{ units: 4 }]);
    await story.pull(orderId, [{ lineId, lotId, units: 4 }]);
    await as('crew').gardens.plantOrder(
      sent({ orderId, happenedOn: '2026-05-20', rows: [{ lineId, lotId, units: 4 }] }),
    );
    expect(await refusalOf(as('owner').gardens.blankClient(sent({ clientId: story.clientId })))).toMatchObject({
      code: 'orders-are-open',
      data: { orders: ['G-26-001'] },
    });
    await as('crew').orders.finishOrder(sent({ orderId }));
    await as('owner').gardens.blankClient(sent({ clientId: story.clientId }));
    const client = await as('viewer').gardens.readClient({ clientId: story.clientId });
    expect(client).toMatchObject({ isBlanked: true, name: '—', email: null, phone: null, address: null, note: '' });
    expect(JSON.stringify(client)).not.toMatch(/Fen|dog|South/);
    expect(
      (await as('viewer').gardens.readSite({ siteId: story.siteId })).planted.map(({ units, lotId: of }) => [
        of,
        units,
      ]),
    ).toEqual([[lotId, 4]]);
    expect((await as('viewer').gardens.listClients({})).rows).toEqual([]);
  });

  it('whose data were blanked take no changes, sites or orders', async () => {
    await as('owner').gardens.blankClient(sent({ clientId: story.clientId }));
    for (const attempt of [
      () => as().clients.editClient(sent({ clientId: story.clientId, name: 'Back again' })),
      () => as().clients.addSite(sent({ siteId: randomUUID(), clientId: story.clientId, name: 'New' })),
      () => as().clients.editSite(sent({ siteId: story.siteId, name: 'New' })),
      () => as().clients.addBed(sent({ bedId: randomUUID(), siteId: story.siteId, name: 'New' })),
      () =>
        as().orders.addOrder(
          sent({ orderId: randomUUID(), clientId: story.clientId, kind: 'pickup' as const, dueOn: '2026-06-01' }),
        ),
      () => as('owner').gardens.blankClient(sent({ clientId: story.clientId })),
    ])
      expect((await refusalOf(attempt())).code).toBe('client-blanked');
  });

  it('may be blanked by the owner alone', async () => {
    expect((await refusalOf(as('grower').gardens.blankClient(sent({ clientId: story.clientId })))).code).toBe(
      'not-allowed',
    );
  });

  it('are added once: the same id is refused a second time', async () => {
    expect((await refusalOf(as().clients.addClient(sent({ clientId: story.clientId, name: 'Twin' })))).code).toBe(
      'id-taken',
    );
    expect(
      (await refusalOf(as().clients.addSite(sent({ siteId: story.siteId, clientId: story.clientId, name: 'Twin' }))))
        .code,
    ).toBe('id-taken');
  });

  it('that do not exist here are not found, whichever way they are named', async () => {
    const nobody = randomUUID();
    const expected = async (work: Promise<unknown>, field: string) =>
      expect(await refusalOf(work)).toMatchObject({ code: 'not-found', field });
    await expected(as().clients.editClient(sent({ clientId: nobody, name: 'X' })), 'clientId');
    await expected(as().clients.addSite(sent({ siteId: randomUUID(), clientId: nobody, name: 'X' })), 'clientId');
    await expected(as().clients.editSite(sent({ siteId: nobody, name: 'X' })), 'siteId');
    await expected(as().clients.addBed(sent({ bedId: randomUUID(), siteId: nobody, name: 'X' })), 'siteId');
    await expected(as().clients.editBed(sent({ bedId: nobody, name: 'X' })), 'bedId');
    await expected(as('viewer').gardens.readClient({ clientId: nobody }), 'clientId');
    await expected(as('viewer').gardens.readSite({ siteId: nobody }), 'siteId');
  });
});
