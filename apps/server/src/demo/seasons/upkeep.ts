import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { type DemoLots, readStanding } from '../lots.ts';
import type { Stage } from '../stage.ts';

/** What happens to lots once they stand: out to the yard, checked, sold at market, thinned by weather, leftovers cleared. */
export function planUpkeep(stage: Stage, grounds: Grounds, lots: DemoLots, firstYear: number, lastYear: number): void {
  for (let year = firstYear; year <= lastYear; year++) {
    for (const md of ['05-22', '07-18', '10-02'])
      stage.onWorkday(`${year}-${md}`, (day) => carryOut(stage, grounds, lots, day));
    for (const md of ['06-28', '08-24', '10-10'])
      stage.onWorkday(`${year}-${md}`, (day) => checkRootBalls(stage, lots, day));
    for (const md of ['05-10', '06-07', '09-06'])
      stage.onWorkday(`${year}-${md}`, (day) => sellAtMarket(stage, lots, day, 0.5));
    stage.onWorkday(`${year}-04-30`, (day) => clearLeftovers(stage, lots, day));
    for (const md of ['06-24', '10-26']) stage.onWorkday(`${year}-${md}`, (day) => discardOverdue(stage, day));
    for (const md of ['06-12', '10-12']) stage.onWorkday(`${year}-${md}`, (day) => sellWhatMustLeave(stage, day));
    stage.onWorkday(`${year}-07-09`, (day) => droughtLosses(stage, lots, day, 0.06));
    stage.onWorkday(`${year}-08-13`, (day) => treatBeardTongues(stage, lots, day));
    stage.onWorkday(`${year}-11-05`, (day) => underCover(stage, grounds, lots, day));
  }
}

async function carryOut(stage: Stage, grounds: Grounds, lots: DemoLots, day: string): Promise<void> {
  const ready = lots.all.filter(({ place, since }) => place.startsWith('H2') && since < addDays(day, -12));
  for (const place of ['Y-N', 'Y-S']) {
    const here = ready.filter((_, i) => (i % 2 === 0) === (place === 'Y-N'));
    if (here.length === 0) continue;
    await stage.as('crew').stock.moveMany(
      stage.sent({
        lotIds: here.map(({ lotId }) => lotId),
        toPlaceId: grounds.place(place),
        happenedOn: day,
        note: 'Hardened off',
      }),
    );
    for (const lot of here) lot.place = place;
  }
}

async function underCover(stage: Stage, grounds: Grounds, lots: DemoLots, day: string): Promise<void> {
  const small = lots.all.filter(
    ({ container, place }) => (container === 'pot-9cm' || container.startsWith('plug')) && place.startsWith('Y'),
  );
  if (small.length === 0) return;
  await stage.as('crew').stock.moveMany(
    stage.sent({
      lotIds: small.map(({ lotId }) => lotId),
      toPlaceId: grounds.place('CF1'),
      happenedOn: day,
      note: 'Covered for the winter',
    }),
  );
  for (const lot of small) lot.place = 'CF1';
}

async function checkRootBalls(stage: Stage, lots: DemoLots, day: string): Promise<void> {
  const due = lots.all.filter(({ since, container }) => since <= addDays(day, -45) && !container.startsWith('plug'));
  const holds = due.filter(() => stage.chance.share() < 0.7).slice(0, 60);
  if (holds.length > 0)
    await stage
      .as('crew')
      .stock.observeMany(
        stage.sent({ lotIds: holds.map(({ lotId }) => lotId), kind: 'root-ball', result: 'holds', happenedOn: day }),
      );
}

async function sellAtMarket(stage: Stage, lots: DemoLots, day: string, share: number): Promise<void> {
  const old = lots.all.filter(({ since }) => since <= addDays(day, -70));
  const unitsOf = await readStanding(stage);
  for (const lot of old) {
    if (stage.chance.share() > share) continue;
    const {
      free,
      places: [here],
    } = unitsOf(lot.lotId);
    if (!here) continue;
    const units = Math.min(free, Math.floor(here.units * (0.5 + stage.chance.share() * 0.5)));
    if (units > 0)
      await stage.as('grower').stock.sellFromLot(
        stage.sent({
          lotId: lot.lotId,
          units,
          placeId: here.placeId,
          party: 'Saturday plant market',
          happenedOn: day,
        }),
      );
  }
}

/** Before a window closes, what the board says must leave and nobody was promised goes cheaply; a few lots are always overlooked. */
async function sellWhatMustLeave(stage: Stage, day: string): Promise<void> {
  const { rows } = await stage.as('grower').potLife.readBoard({ show: 'due', kind: 'lot', free: true, perPage: 200 });
  for (const row of rows) {
    const here = row.places[0];
    if (!here || stage.chance.share() < 0.2) continue;
    await stage.as('grower').stock.sellFromLot(
      stage.sent({
        lotId: row.id,
        units: Math.min(row.freeUnits, here.units),
        placeId: here.placeId,
        party: 'End of season sale',
        happenedOn: day,
      }),
    );
  }
}

/** What is long past its day goes to the heap; a lot or two is always spared once more. */
async function discardOverdue(stage: Stage, day: string): Promise<void> {
  const { rows } = await stage.as('grower').potLife.readBoard({ show: 'past', kind: 'lot', free: true, perPage: 200 });
  for (const row of rows) {
    const here = row.places[0];
    if (!here || (row.daysLeft ?? 0) > -5 || stage.chance.share() < 0.08) continue;
    await stage.as('crew').stock.loseFromLot(
      stage.sent({
        lotId: row.id,
        units: Math.min(row.freeUnits, here.units),
        placeId: here.placeId,
        cause: 'discarded',
        happenedOn: day,
      }),
    );
  }
}

/** Last season's leftovers: a few are given to a school garden, the rest go to the heap. */
async function clearLeftovers(stage: Stage, lots: DemoLots, day: string): Promise<void> {
  const old = lots.all.filter(({ since }) => since <= addDays(day, -300));
  const unitsOf = await readStanding(stage);
  for (const lot of old) {
    const {
      free,
      places: [here],
    } = unitsOf(lot.lotId);
    if (!here || free === 0 || stage.chance.share() < 0.15) continue;
    const units = Math.min(free, here.units);
    const body = { lotId: lot.lotId, units, placeId: here.placeId, happenedOn: day };
    if (stage.chance.share() < 0.35)
      await stage.as('grower').stock.giveFromLot(stage.sent({ ...body, party: 'a school garden' }));
    else await stage.as('crew').stock.loseFromLot(stage.sent({ ...body, cause: 'discarded' }));
    lots.remove(lot.lotId);
  }
}

async function droughtLosses(stage: Stage, lots: DemoLots, day: string, share: number): Promise<void> {
  const hit = lots.all.filter(({ since }) => since < addDays(day, -20) && stage.chance.share() < 0.3);
  const unitsOf = await readStanding(stage);
  const standing = hit.filter(({ lotId }) => unitsOf(lotId).onHand > 0).map(({ lotId }) => lotId);
  if (standing.length > 0)
    await stage
      .as('crew')
      .stock.loseMany(stage.sent({ lotIds: standing, percent: share * 100, cause: 'drought', happenedOn: day }));
}

/** Beard-tongues get thrips in August; nothing that feeds caterpillars stands beside them. */
async function treatBeardTongues(stage: Stage, lots: DemoLots, day: string): Promise<void> {
  const unitsOf = await readStanding(stage);
  const standing = lots.all
    .filter(({ lotId, plant }) => plant === 'PEDI' && unitsOf(lotId).onHand > 0)
    .map(({ lotId }) => lotId);
  if (standing.length === 0) return;
  await stage.as('grower').stock.treatLots(
    stage.sent({
      lotIds: standing,
      product: 'Invented Soap Concentrate',
      registrationNo: 'DEMO-0000',
      rate: '20 ml to the litre',
      applicator: 'Teodor Quillby, licensed (invented)',
      target: 'thrips',
      treatedAt: `${day}T14:00:00Z`,
      reentryHours: 12,
    }),
  );
}
