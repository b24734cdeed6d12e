import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

interface NewLine {
  lineId: string;
  plantId: string;
  containerId: string;
  units: number;
  kit: { kitId: string; units: number } | null;
}

describe('a kit', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  let otherId: string;
  let kitId: string;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    otherId = await story.addPlant({ name: 'Monarda fistulosa', code: 'MOFI' });
    kitId = randomUUID();
    await as().orders.addKit(sent({ kitId, name: 'Monarch bed', note: '', components: parts() }));
    return () => nursery.close();
  });
  afterAll(() => database.drop());

  const as = () => nursery.as('grower');
  const part = (plantId: string, units: number, containerId = story.containerId) => ({ plantId, containerId, units });
  const parts = () => [part(story.plantId, 3), part(otherId, 2)];
  const check = (on = '2026-06-01') =>
    nursery.as('viewer').promises.checkKit({ kitId, on, siteId: story.siteId, clientId: story.clientId });
  const kitLine = (plantId: string, units: number, kits = 2): NewLine => ({
    lineId: randomUUID(),
    ...part(plantId, units),
    kit: { kitId, units: kits },
  });
  const order = (lines: NewLine[]) => {
    const orderId = randomUUID();
    return {
      orderId,
      saved: as().orders.addOrder(
        sent({
          orderId,
          clientId: story.clientId,
          siteId: story.siteId,
          kind: 'installation' as const,
          dueOn: '2026-06-01',
          lines,
        }),
      ),
    };
  };

  it('adds a line for each of its components, times how many, which remember it', async () => {
    const lots = [await story.addLot({ units: 9 }), await story.addLot({ units: 9, plantId: otherId })];
    const { orderId } = await story.order([]);
    const lineIds = [randomUUID(), randomUUID()];
    await as().orders.addKitLines(sent({ orderId, kitId, units: 2, lineIds }));
    expect((await story.read(orderId)).lineRows).toMatchObject([
      { id: lineIds[0], scientificName: 'Asclepias tuberosa', units: 6, kit: { name: 'Monarch bed', units: 2 } },
      { id: lineIds[1], scientificName: 'Monarda fistulosa', units: 4, kit: { name: 'Monarch bed', units: 2 } },
    ]);
    expect([await story.heldBy(lineIds[0] ?? ''), await story.heldBy(lineIds[1] ?? '')]).toEqual([
      { [lots[0] ?? '']: 6 },
      { [lots[1] ?? '']: 4 },
    ]);
  });

  it('comes with a new order too, whose other lines belong to none', async () => {
    const { orderId, saved } = order([
      kitLine(story.plantId, 6),
      kitLine(otherId, 4),
      { ...kitLine(story.plantId, 1), kit: null },
    ]);
    await saved;
    expect((await story.read(orderId)).lineRows.map(({ units, kit }) => [units, kit?.units ?? null])).toEqual([
      [6, 2],
      [4, 2],
      [1, null],
    ]);
  });

  it('can be promised as often as its scarcest component allows', async () => {
    await story.addLot({ units: 20 });
    await story.addLot({ units: 9, plantId: otherId });
    await story.order([{ units: 2, plantId: otherId }]);
    expect(await check()).toMatchObject({
      on: '2026-06-01',
      kits: 3,
      components: [
        { units: 3, promisableUnits: 20 },
        { units: 2, promisableUnits: 7 },
      ],
    });
  });

  it('can be promised fewer times where an earlier line may take one component or the other', async () => {
    await story.addLot({ units: 30 });
    await story.addLot({ units: 20, plantId: otherId });
    await story.order([{ units: 30, alternatives: [{ plantId: otherId, containerId: story.containerId }] }]);
    const { kits, components } = await check();
    expect(components.map(({ promisableUnits }) => promisableUnits)).toEqual([20, 20]);
    expect(kits).toBe(4);
    const { orderId } = await story.order([]);
    const lineIds = [randomUUID(), randomUUID()];
    await as().orders.addKitLines(sent({ orderId, kitId, units: kits, lineIds }));
    expect((await story.read(orderId)).shortUnits).toBe(0);
  });

  it('counts trays whole, and takes whole trays only', async () => {
    const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, cells: 72 });
    expect(
      await refusalOf(
        as().orders.editKit(sent({ kitId, name: 'Monarch bed', components: [part(story.plantId, 50, trayId)] })),
      ),
    ).toMatchObject({ code: 'whole-trays-only', field: 'components.0.units', data: { below: null, above: 72 } });
    await as().orders.editKit(sent({ kitId, name: 'Monarch bed', components: [part(story.plantId, 144, trayId)] }));
    await story.addLot({ units: 300, containerId: trayId });
    expect(await check()).toMatchObject({ kits: 2, components: [{ promisableUnits: 288 }] });
  });

  it('that was changed leaves lines as they are, and is added as it now is', async () => {
    const { orderId } = await story.order([]);
    await as().orders.addKitLines(sent({ orderId, kitId, units: 1, lineIds: [randomUUID(), randomUUID()] }));
    await as().orders.editKit(sent({ kitId, name: 'Monarch corner', components: [part(otherId, 5)] }));
    expect((await story.read(orderId)).lineRows.map(({ units, kit }) => [units, kit?.name])).toEqual([
      [3, 'Monarch corner'],
      [2, 'Monarch corner'],
    ]);
    expect(
      await refusalOf(
        as().orders.addKitLines(sent({ orderId, kitId, units: 1, lineIds: [randomUUID(), randomUUID()] })),
      ),
    ).toMatchObject({ code: 'kit-changed', field: 'kitId' });
    expect(await refusalOf(order([kitLine(otherId, 4)]).saved)).toMatchObject({
      code: 'not-of-kit',
      field: 'lines.0.units',
      data: { kit: 'Monarch corner', units: 10 },
    });
    expect(await refusalOf(order([kitLine(story.plantId, 6)]).saved)).toMatchObject({
      code: 'not-of-kit',
      data: { units: null },
    });
  });

  it('has a name of its own and names each component once', async () => {
    const again = (more: object) =>
      refusalOf(
        as().orders.addKit(sent({ kitId: randomUUID(), name: 'Another', note: '', components: parts(), ...more })),
      );
    expect(await again({ name: 'monarch BED' })).toMatchObject({ code: 'kit-name-taken', field: 'name' });
    expect(await again({ components: [...parts(), part(otherId, 1)] })).toMatchObject({
      code: 'component-twice',
      field: 'components.2.plantId',
    });
    expect(await again({ components: [part(randomUUID(), 1)] })).toMatchObject({ code: 'not-found' });
    expect(await again({ kitId })).toMatchObject({ code: 'id-taken', field: 'kitId' });
  });

  it('that is retired is offered no more and can be asked for no more; its name is free', async () => {
    const { orderId } = await story.order([]);
    const lineId = randomUUID();
    await as().orders.addKitLines(sent({ orderId, kitId, units: 1, lineIds: [lineId, randomUUID()] }));
    expect(await nursery.as('viewer').orders.listKits({})).toMatchObject([
      { id: kitId, name: 'Monarch bed', components: [{ units: 3 }, { units: 2 }] },
    ]);
    await as().orders.retireKit(sent({ kitId }));
    expect(await nursery.as('viewer').orders.listKits({})).toEqual([]);
    const asking = [
      () => as().orders.addKitLines(sent({ orderId, kitId, units: 1, lineIds: [randomUUID(), randomUUID()] })),
      () => check(),
      () => as().orders.retireKit(sent({ kitId })),
      () => order([kitLine(story.plantId, 6)]).saved,
    ];
    for (const ask of asking) expect(await refusalOf(ask())).toMatchObject({ code: 'kit-retired' });
    expect((await story.lineOf(orderId, lineId)).kit).toEqual({ name: 'Monarch bed', units: 1 });
    await as().orders.addKit(sent({ kitId: randomUUID(), name: 'Monarch bed', note: '', components: parts() }));
  });
});
