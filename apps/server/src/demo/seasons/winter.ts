import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import type { Stage } from '../stage.ts';

type Row = Awaited<ReturnType<ReturnType<Stage['as']>['stock']['readSpringSheet']>>[number];
type Count = Parameters<ReturnType<Stage['as']>['stock']['countSpring']>[0]['body']['counts'][number];

/** Where pots stand through winter in the open or under a frame. */
const OUTDOORS = ['Y', 'CF1', 'CF2'];
/** Those that come up late and look dead until then. */
const isLate = ({ scientificName }: Row) => scientificName.startsWith('Asclepias');

/** In May everything that wintered is counted; in the middle of June what was not up then is counted once more, as far as somebody gets to it. */
export function planWinter(stage: Stage, grounds: Grounds, lots: DemoLots, firstYear: number, lastYear: number): void {
  for (let year = firstYear + 1; year <= lastYear + 1; year++) {
    stage.onWorkday(`${year}-05-04`, (day) => countAll(stage, grounds, lots, day, year));
    stage.onWorkday(`${year}-06-16`, (day) => countAgain(stage, day, year > lastYear - 1));
  }
}

async function countAll(stage: Stage, grounds: Grounds, lots: DemoLots, day: string, year: number): Promise<void> {
  const wintered = new Set(lots.all.filter(({ since }) => since < `${year}-01-01`).map(({ lotId }) => lotId));
  for (const place of OUTDOORS) {
    const rows = await stage.as('crew').stock.readSpringSheet({ placeId: grounds.place(place) });
    await send(
      stage,
      rows.filter(({ lotId }) => wintered.has(lotId)).map((row) => told(stage, row)),
      day,
      'Frost is out of the pots',
    );
  }
}

/** A tenth is lost to an ordinary winter, and of late risers a fifth is still asleep in May. */
function told(stage: Stage, row: Row): Count {
  const deadUnits = Math.min(row.standing, Math.round(row.standing * stage.chance.share() * 0.16));
  const notUpUnits = isLate(row) ? Math.round((row.standing - deadUnits) * (0.1 + stage.chance.share() * 0.2)) : 0;
  return {
    lotId: row.lotId,
    placeId: row.placeId,
    upUnits: row.standing - deadUnits - notUpUnits,
    deadUnits,
    notUpUnits,
  };
}

async function countAgain(stage: Stage, day: string, isLast: boolean): Promise<void> {
  const open = await stage.as('crew').stock.listNotUp({ waiting: true });
  const counts = open
    .filter(() => !isLast || stage.chance.share() < 0.6)
    .map(({ lotId, placeId, standingUnits, notUpUnits }) => {
      const deadUnits = Math.round(notUpUnits * (0.2 + stage.chance.share() * 0.3));
      return { lotId, placeId, upUnits: standingUnits - deadUnits, deadUnits, notUpUnits: 0 };
    });
  await send(stage, counts, day, 'The last milkweeds are up');
}

async function send(stage: Stage, counts: Count[], happenedOn: string, note: string): Promise<void> {
  if (counts.length > 0)
    await stage.as('crew').stock.countSpring(stage.sent({ counts, happenedOn, note, confirmed: true }));
}
