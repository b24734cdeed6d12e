// The end of the season lies ahead, for a first owner in November and for every nursery whose season passes.
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { operations } from '../../../apps/server/src/features/operations.ts';
import { createFirstOwner } from '../../../apps/server/src/features/people/sign-in.ts';
import { loadSeason } from '../../../apps/server/src/features/promises/allocation/supplies-store.ts';
import { query } from '../../../apps/server/src/trpc/operation.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { readFreshPlan } from '../../support/fresh-plan.ts';
import { gardenStory } from '../../support/gardens.ts';
import { openNursery, openServer, sent, type TestNursery } from '../../support/nursery.ts';

describe('a first owner', () => {
  let database: TestDatabase;
  let server: Awaited<ReturnType<typeof openServer>>;
  beforeEach(async () => {
    database = await createDatabase();
    server = await openServer(database);
  });
  afterEach(async () => {
    await server.close();
    await database.drop();
  });

  it.each([
    ['2026-05-20T17:00:00Z', 'America/Chicago', '2026-10-31'],
    ['2026-11-15T17:00:00Z', 'America/Chicago', '2027-10-31'],
    ['2026-12-31T23:30:00Z', 'America/Chicago', '2027-10-31'],
    // Late in the evening of the last day of the season, when it is November in UTC.
    ['2026-11-01T03:00:00Z', 'America/Chicago', '2026-10-31'],
    // Already November there, and still October in UTC.
    ['2026-10-31T20:00:00Z', 'Pacific/Auckland', '2027-10-31'],
    ['2025-12-31T20:00:00Z', 'Pacific/Auckland', '2026-10-31'],
  ])('at %s in %s gets a season that ends on %s', async (at, zone, endsOn) => {
    await createFirstOwner(
      { database: server.app, now: new Date(at) },
      {
        nurseryName: 'New',
        zone,
        name: 'Somebody',
        email: 'somebody@example.test',
        password: 'more than ten characters',
      },
    );
    expect(await server.sql('SELECT season_end_on::text AS "endsOn" FROM nursery')).toEqual([{ endsOn }]);
  });
});

describe('a season that has passed', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  beforeAll(async () => {
    database = await createDatabase();
    nursery = await openNursery(database);
  });
  afterAll(async () => {
    await nursery.close();
    await database.drop();
  });

  const endsOn = async () =>
    (
      await nursery.sql<{ endsOn: string }>('SELECT season_end_on::text AS "endsOn" FROM nursery WHERE id = $1', [
        nursery.nurseryId,
      ])
    )[0]?.endsOn;
  const setEnd = (day: string) =>
    nursery.sql('UPDATE nursery SET season_end_on = $2 WHERE id = $1', [nursery.nurseryId, day]);
  const beginDay = (day: string) => {
    nursery.clock.set(day);
    return nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: `Of ${day}` }));
  };

  it.each([
    ['the last day itself', '2026-10-31', '2026-10-31', '2026-10-31'],
    ['the day after', '2026-10-31', '2026-11-01', '2027-10-31'],
    ['years later', '2026-10-31', '2029-03-01', '2029-10-31'],
    ['a day that the nursery set', '2029-06-15', '2029-06-16', '2030-06-15'],
    ['a leap day', '2032-02-29', '2032-03-01', '2033-02-28'],
  ])('ends on the same day of the year again: %s', async (_, ended, today, next) => {
    await setEnd(ended);
    await beginDay(today);
    expect(await endsOn()).toBe(next);
  });

  it('is planned anew with the next one, so that what declines in it goes out first', async () => {
    nursery.clock.set('2033-03-10');
    await setEnd('2033-04-30');
    const story = await gardenStory(nursery);
    await story.addLot({ units: 10, pottedOn: '2033-03-01', rootCheckedOn: '2033-03-01' });
    const declining = await story.addLot({
      units: 10,
      pottedOn: '2033-03-01',
      rootCheckedOn: '2033-03-01',
      plantByOn: '2033-09-01',
    });
    const { lineId } = await story.order([{ units: 10 }], { dueOn: '2033-06-01' });
    await beginDay('2033-05-01');
    expect(await endsOn()).toBe('2034-04-30');
    expect(await story.heldBy(lineId)).toEqual({ [declining]: 10 });
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored).toEqual(fresh);
  });

  it('is reckoned as the next one by reads before the day’s first write', async () => {
    await setEnd('2033-05-01');
    nursery.clock.set('2033-05-02');
    const season = query({
      name: 'season',
      input: operations.people.listPeople.input,
      roles: ['viewer'],
      read: (context) => loadSeason(context, []),
    });
    expect(await nursery.runner.read(season, nursery.people.viewer, {})).toMatchObject({ horizonOn: '2034-05-01' });
    expect(await endsOn()).toBe('2033-05-01');
  });
});
