import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusalOf, sent } from '../../support/nursery.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
  await story.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing, note) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common-practice', '')`,
    [story.nurseryId, newId()],
  );
  await story.sql(
    `INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, standing) VALUES ($1, $2, '04-15', '06-15', 'own'), ($1, $3, '09-01', '10-15', 'own')`,
    [story.nurseryId, newId(), newId()],
  );
  await story.sql('UPDATE nursery SET rules_version = rules_version + 1 WHERE id = $1', [story.nurseryId]);
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const crew = () => story.as('crew').stock;
const read = (lotId: string) => story.as('viewer').stock.readLot({ lotId });

describe('the page of a lot', () => {
  test('says by when it must be out, which rule binds, and the windows behind it', async () => {
    const { lotId } = await story.begin();
    // The story's lot was written by hand; what its clocks read of changes here, so that they are reckoned.
    await crew().observeMany(sent({ lotIds: [lotId], kind: 'root-ball', result: 'holds', happenedOn }));
    expect(await read(lotId)).toMatchObject({
      plantByOn: '2026-10-15',
      limitOn: '2027-04-14',
      plantByState: 'window',
      daysLeft: 148,
      daysInPot: 36,
      dormant: false,
      mayBeDormant: true,
      rule: { basis: 'confined', span: 'P1Y', genus: 'Asclepias' },
      windows: [
        { opensMd: '04-15', closesMd: '06-15' },
        { opensMd: '09-01', closesMd: '10-15' },
      ],
    });
  });

  test('says what stands where, what is promised, and what is free', async () => {
    const begun = await story.begin();
    await story.promise(begun, 12, begun.lotId);
    await crew().moveLot(sent({ lotId: begun.lotId, units: 5, toPlaceId: begun.yardId, happenedOn }));
    const lot = await read(begun.lotId);
    expect(lot.standing.map(({ units }) => units)).toEqual([35, 5]);
    expect([lot.units, lot.promised.map(({ client, units }) => [client, units])]).toEqual([
      { onHand: 40, staged: 0, promised: 12, free: 28 },
      [['Invented client', 12]],
    ]);
  });

  test('names parents and children', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const next = newId();
    await crew().potUpLot(
      sent({ lotId, into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 15 }], happenedOn }),
    );
    const [parent, child] = [await read(lotId), await read(next)];
    expect([parent.children, child.parents]).toMatchObject([[{ id: next, units: 15 }], [{ id: lotId, kind: 'lot' }]]);
  });

  test('tells each entry with both its ends', async () => {
    const { lotId, yardId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 5, toPlaceId: yardId, happenedOn, note: 'more sun' }));
    const { entries } = await read(lotId);
    expect(entries).toMatchObject([
      {
        kind: 'move',
        note: 'more sun',
        person: 'Test crew',
        movements: [{ fromUnits: 5, toUnits: 5, from: { kind: 'place' }, to: { kind: 'place' } }],
      },
      { kind: 'opening', movements: [{ from: { kind: 'outside', outside: 'opening' }, toUnits: 40 }] },
    ]);
  });

  test('pages through a long story without losing or repeating an entry', async () => {
    const { lotId } = await story.begin();
    for (let i = 0; i < 44; i++)
      await crew().observeMany(sent({ lotIds: [lotId], kind: 'note', happenedOn, note: `${i}` }));
    const seen: string[] = [];
    let page: Pick<Awaited<ReturnType<typeof read>>, 'entries' | 'moreEntries'> = await read(lotId);
    for (;;) {
      seen.push(...page.entries.map(({ note }) => note));
      const last = page.entries.at(-1);
      if (!page.moreEntries || !last) break;
      page = await crew().readLotEntries({ lotId, before: { happenedOn: last.happenedOn, version: last.version } });
    }
    expect(seen).toEqual([...Array.from({ length: 44 }, (_, i) => `${43 - i}`), '']);
  });

  test('stands in the order of the days, not of the writing down', async () => {
    const { lotId, yardId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 5, toPlaceId: yardId, happenedOn }));
    await crew().loseFromLot(sent({ lotId, placeId: yardId, units: 1, cause: 'rot', happenedOn: '2026-05-01' }));
    expect((await read(lotId)).entries.map(({ kind }) => kind)).toEqual(['move', 'lose', 'opening']);
  });

  test('shows only its own part of an entry over many lots', async () => {
    const { lotId, plantId, sourceId, containerId, benchId, yardId } = await story.begin();
    await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, units: 7 });
    await crew().moveMany(sent({ placeId: benchId, toPlaceId: yardId, happenedOn }));
    const { entries } = await read(lotId);
    expect(entries[0]?.movements).toMatchObject([{ fromUnits: 40 }]);
  });

  test.each(['readLot', 'readLotEntries'] as const)('of another nursery is not found by %s', async (name) => {
    const work =
      name === 'readLot'
        ? read(newId())
        : crew().readLotEntries({ lotId: newId(), before: { happenedOn, version: 9 } });
    expect(await refusalOf(work)).toMatchObject({ code: 'not-found', field: 'lotId' });
  });
});
