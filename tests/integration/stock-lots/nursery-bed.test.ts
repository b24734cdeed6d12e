import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusalOf, sent } from '../../support/nursery.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const crew = () => story.as('crew').stock;

describe('the nursery bed', () => {
  async function plantedOut(units = 10, countKind: 'counted' | 'estimated' = 'estimated') {
    const begun = await story.begin();
    const bedLot = newId();
    await crew().plantInBed(
      sent({
        lotId: begun.lotId,
        units,
        into: { lotId: bedLot, bedId: begun.bedId, containerId: begun.groundId, countKind },
        happenedOn: '2026-05-01',
      }),
    );
    return { ...begun, bedLot };
  }

  test('ends both clocks of what is planted in it', async () => {
    const { bedLot } = await plantedOut();
    expect(await story.standing(bedLot)).toEqual({ N: 10 });
    expect(await story.lotRow(bedLot)).toMatchObject({ confined_on: null, container_on: null });
  });

  test('gives back plants whose clocks start on the day they are lifted', async () => {
    const { bedLot, containerId, benchId } = await plantedOut();
    const next = newId();
    await crew().liftFromBed(
      sent({ lotId: bedLot, units: 8, into: [{ lotId: next, containerId, placeId: benchId, units: 8 }], happenedOn }),
    );
    expect(await story.lotRow(next)).toMatchObject({ confined_on: happenedOn, container_on: happenedOn });
    expect(await story.standing(bedLot)).toEqual({ N: 2 });
  });

  test('may hold more than was estimated, and the rest is booked as found', async () => {
    const { bedLot, containerId, benchId } = await plantedOut();
    const { entryId } = await crew().liftFromBed(
      sent({
        lotId: bedLot,
        units: 13,
        into: [{ lotId: newId(), containerId, placeId: benchId, units: 13 }],
        happenedOn,
      }),
    );
    expect([await story.unitsOutside(entryId, 'found'), await story.standing(bedLot)]).toEqual([3, {}]);
  });

  test('does not hold more than was counted', async () => {
    const { bedLot, containerId, benchId } = await plantedOut(10, 'counted');
    expect(
      await refusalOf(
        crew().liftFromBed(
          sent({
            lotId: bedLot,
            units: 13,
            into: [{ lotId: newId(), containerId, placeId: benchId, units: 13 }],
            happenedOn,
          }),
        ),
      ),
    ).toMatchObject({ code: 'not-enough-units', field: 'units' });
  });

  test('is the only place to lift from', async () => {
    const { lotId, containerId, benchId } = await story.begin();
    expect(
      (
        await refusalOf(
          crew().liftFromBed(
            sent({ lotId, units: 3, into: [{ lotId: newId(), containerId, placeId: benchId, units: 3 }], happenedOn }),
          ),
        )
      ).code,
    ).toBe('not-in-ground');
  });

  test('is the only place to plant in', async () => {
    const { lotId, benchId, groundId } = await story.begin();
    expect(
      await refusalOf(
        crew().plantInBed(
          sent({ lotId, units: 3, into: { lotId: newId(), bedId: benchId, containerId: groundId }, happenedOn }),
        ),
      ),
    ).toMatchObject({ code: 'not-a-nursery-bed', field: 'into.bedId' });
  });

  test('needs the ground and no pot', async () => {
    const { lotId, bedId, bigPotId } = await story.begin();
    expect(
      await refusalOf(
        crew().plantInBed(
          sent({ lotId, units: 3, into: { lotId: newId(), bedId, containerId: bigPotId }, happenedOn }),
        ),
      ),
    ).toMatchObject({ code: 'wrong-container', data: { needs: 'ground' } });
  });

  test('keeps plants that cannot be potted up without lifting', async () => {
    const { bedLot, bigPotId, benchId } = await plantedOut();
    expect(
      (
        await refusalOf(
          crew().potUpLot(
            sent({
              lotId: bedLot,
              into: [{ lotId: newId(), containerId: bigPotId, placeId: benchId, units: 3 }],
              happenedOn,
            }),
          ),
        )
      ).code,
    ).toBe('stands-in-ground');
  });
});
