import { readFileSync } from 'node:fs';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sent } from '../../support/nursery.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';

it('lots from before that have no day get the day that is true of them, and those that wait for a check get none', async () => {
  const { as, begin, lotRow, nurseryId, sql } = story;
  const { stock } = as('grower');
  const ground = await begin();
  const row = () => ({
    lotId: newId(),
    plantId: ground.plantId,
    containerId: ground.containerId,
    placeId: ground.benchId,
    units: 10,
    since: '2026-04-10',
    sourceId: ground.sourceId,
  });
  const [opened, apart, other] = [row(), row(), row()];
  await stock.receiveOpening(sent({ happenedOn, rows: [opened, apart, other] }));
  const into = () => ({ lotId: newId(), containerId: ground.bigPotId, placeId: ground.benchId, units: 2 });
  const [potted, expected, part, partOfPotted, merged] = [
    into(),
    { ...into(), readyOn: '2026-06-10' },
    newId(),
    newId(),
    newId(),
  ];
  await stock.potUpLot(sent({ lotId: opened.lotId, into: [potted, expected], happenedOn }));
  await stock.splitLot(
    sent({ lotId: opened.lotId, into: [{ lotId: part, placeId: ground.benchId, units: 2 }], happenedOn }),
  );
  await stock.splitLot(
    sent({ lotId: potted.lotId, into: [{ lotId: partOfPotted, placeId: ground.benchId, units: 1 }], happenedOn }),
  );
  await stock.mergeLots(
    sent({ lotIds: [opened.lotId, other.lotId], into: { lotId: merged, placeId: null }, happenedOn }),
  );
  await stock.observeMany(sent({ lotIds: [apart.lotId], kind: 'root-ball' as const, result: 'not-yet', happenedOn }));

  // As they were stored before: nothing that came in or was only relabelled had a day.
  await sql('UPDATE lot SET ready_on = NULL WHERE nursery_id = $1 AND id <> $2 AND id <> $3', [
    nurseryId,
    expected.lotId,
    ground.lotId,
  ]);
  await sql(
    readFileSync(path.join(repositoryRoot, 'prisma/migrations/20261130120200_stock_ready_days/migration.sql'), 'utf8'),
  );

  const days = Object.fromEntries(
    await Promise.all(
      Object.entries({
        opened: opened.lotId,
        other: other.lotId,
        apart: apart.lotId,
        part,
        merged,
        potted: potted.lotId,
        partOfPotted,
        expected: expected.lotId,
      }).map(async ([name, id]) => [name, (await lotRow(id))?.ready_on] as const),
    ),
  );
  expect(days).toEqual({
    opened: '2026-04-10',
    other: '2026-04-10',
    part: '2026-04-10',
    merged: '2026-04-10',
    expected: '2026-06-10',
    apart: null,
    potted: null,
    partOfPotted: null,
  });
});
