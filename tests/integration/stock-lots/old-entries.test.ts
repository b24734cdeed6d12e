import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

const today = '2026-05-20';
let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let lot: Awaited<ReturnType<ReturnType<typeof stockOf>['addReadyLot']>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: today });
});
beforeEach(async () => {
  nursery = { ...(await server.addNursery()), close: server.close };
  stock = stockOf(nursery);
  lot = await stock.addReadyLot();
  await nursery.sql(`UPDATE lot SET count_kind = 'sampled' WHERE id = $1`, [lot.lotId]);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const grower = () => nursery.as('grower').stock;
const lotNow = async () =>
  (
    await nursery.sql(
      `SELECT count_kind, ready_on::text, root_checked_on::text, plant_id::text FROM lot WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, lot.lotId],
    )
  )[0];
const placeNow = async () =>
  (
    await nursery.sql('SELECT closed_until_at, closed_reason FROM place WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      lot.placeId,
    ])
  )[0];

/** What is entered, and what it must leave as it was once it is taken back. */
const entries: Record<string, { enter(): Promise<{ entryId: string }>; told(): Promise<unknown> }> = {
  'a count of a lot': {
    enter: () =>
      grower().countLot(
        sent({ lotId: lot.lotId, countedUnits: 38, countKind: 'estimated' as const, happenedOn: today }),
      ),
    told: lotNow,
  },
  'a spring count': {
    enter: () =>
      grower().countSpring(
        sent({
          counts: [{ lotId: lot.lotId, placeId: lot.placeId, upUnits: 40, deadUnits: 0, notUpUnits: 0 }],
          happenedOn: today,
        }),
      ),
    told: lotNow,
  },
  'a check of the root ball': {
    enter: () =>
      grower().observeMany(
        sent({
          lotIds: [lot.lotId],
          kind: 'root-ball' as const,
          result: 'not-yet',
          readyOn: '2026-06-01',
          happenedOn: today,
        }),
      ),
    told: lotNow,
  },
  'another name': {
    enter: async () =>
      grower().reIdentifyLot(
        sent({
          lotId: lot.lotId,
          plantId: await stock.addPlant({ name: 'Asclepias alia', code: 'ASAL' }),
          happenedOn: today,
          note: 'Its leaves are opposite.',
        }),
      ),
    told: lotNow,
  },
  'a closing of a place': {
    enter: () =>
      grower().closePlace(
        sent({ placeId: lot.placeId, untilAt: `${today}T23:00:00Z`, reason: 'The path is flooded.' }),
      ),
    told: placeNow,
  },
  'a treatment that closes its place': {
    enter: () =>
      grower().treatLots(
        sent({
          lotIds: [lot.lotId],
          product: 'Soap',
          applicator: 'Robin',
          treatedAt: `${today}T12:00:00Z`,
          reentryHours: 24,
        }),
      ),
    told: placeNow,
  },
};

/** As entries were written before they named their purpose. */
async function forgetPurpose(entryId: string): Promise<void> {
  await nursery.sql('ALTER TABLE entry DISABLE TRIGGER entry_append_only');
  await nursery.sql(`UPDATE entry SET details = details - 'purpose' WHERE nursery_id = $1 AND id = $2`, [
    nursery.nurseryId,
    entryId,
  ]);
  await nursery.sql('ALTER TABLE entry ENABLE TRIGGER entry_append_only');
}

describe.each(Object.entries(entries))('%s', (_what, { enter, told }) => {
  it.each([
    ['is taken back', false],
    ['from before entries named their purpose is taken back', true],
  ])('%s', async (_how, isOld) => {
    const before = await told();
    const { entryId } = await enter();
    const [entry] = await nursery.sql<{ purpose: string | null }>(
      `SELECT details ->> 'purpose' AS purpose FROM entry WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, entryId],
    );
    expect(entry?.purpose).toEqual(expect.any(String));
    if (isOld) await forgetPurpose(entryId);
    await grower().reverseEntry(sent({ entryId }));
    expect(await told()).toEqual(before);
  });
});

it('that opened a place is not taken back, old or new', async () => {
  for (const isOld of [false, true]) {
    await grower().closePlace(
      sent({ placeId: lot.placeId, untilAt: `${today}T23:00:00Z`, reason: 'The path is flooded.' }),
    );
    const { entryId } = await grower().openPlace(sent({ placeId: lot.placeId, reason: 'It is dry again.' }));
    if (isOld) await forgetPurpose(entryId);
    await expect(grower().reverseEntry(sent({ entryId }))).rejects.toMatchObject({
      cause: expect.objectContaining({ code: 'cannot-reverse' }),
    });
  }
});
