import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import { currentProtocol } from '../protocol.ts';
import { seedsPerGramOf } from '../seed.ts';
import type { Stage } from '../stage.ts';

interface Sowing {
  plant: string;
  /** Day of the year on which it is started, and days until the first come up. */
  md: string;
  emergesAfter: number;
  trays: number;
  tray: string;
  cells: number;
  pot: string;
  /** Share of cells with a plant. */
  share: number;
}

/** Sown outdoors in November the seed waits out the winter; sown in February it was kept cold and moist first. */
export const SOWINGS: readonly Sowing[] = [
  {
    plant: 'ASTU',
    md: '02-20',
    emergesAfter: 21,
    trays: 3,
    tray: 'plug-50-deep',
    cells: 50,
    pot: 'tall-1l',
    share: 0.78,
  },
  {
    plant: 'ASTU',
    md: '11-18',
    emergesAfter: 168,
    trays: 2,
    tray: 'plug-50-deep',
    cells: 50,
    pot: 'tall-1l',
    share: 0.66,
  },
  { plant: 'ASIN', md: '02-25', emergesAfter: 14, trays: 2, tray: 'plug-72', cells: 72, pot: 'pot-1l', share: 0.84 },
  {
    plant: 'ASSY',
    md: '03-01',
    emergesAfter: 18,
    trays: 2,
    tray: 'plug-50-deep',
    cells: 50,
    pot: 'tall-1l',
    share: 0.72,
  },
  {
    plant: 'ECPA',
    md: '11-20',
    emergesAfter: 160,
    trays: 2,
    tray: 'plug-50-deep',
    cells: 50,
    pot: 'band-23cm',
    share: 0.6,
  },
  { plant: 'ECPU', md: '03-05', emergesAfter: 12, trays: 2, tray: 'plug-72', cells: 72, pot: 'pot-1l', share: 0.86 },
  { plant: 'MOFI', md: '03-10', emergesAfter: 10, trays: 2, tray: 'plug-72', cells: 72, pot: 'pot-1l', share: 0.8 },
  { plant: 'LIAS', md: '02-15', emergesAfter: 20, trays: 2, tray: 'plug-72', cells: 72, pot: 'tall-1l', share: 0.7 },
  { plant: 'LIPY', md: '02-15', emergesAfter: 18, trays: 2, tray: 'plug-72', cells: 72, pot: 'tall-1l', share: 0.74 },
  { plant: 'RUHI', md: '03-12', emergesAfter: 11, trays: 2, tray: 'plug-128', cells: 128, pot: 'pot-9cm', share: 0.82 },
  { plant: 'PEDI', md: '03-03', emergesAfter: 16, trays: 2, tray: 'plug-72', cells: 72, pot: 'tall-1l', share: 0.68 },
  { plant: 'SYNO', md: '02-28', emergesAfter: 15, trays: 2, tray: 'plug-72', cells: 72, pot: 'pot-1l', share: 0.71 },
  { plant: 'ZIAU', md: '11-15', emergesAfter: 155, trays: 1, tray: 'plug-72', cells: 72, pot: 'pot-1l', share: 0.55 },
  { plant: 'SCSC', md: '04-02', emergesAfter: 12, trays: 2, tray: 'plug-128', cells: 128, pot: 'pot-9cm', share: 0.88 },
  {
    plant: 'LUPE',
    md: '04-10',
    emergesAfter: 9,
    trays: 1,
    tray: 'plug-38-deep',
    cells: 38,
    pot: 'band-14cm',
    share: 0.83,
  },
];

/** Sown outdoors it lies cold in its tray; otherwise it was kept cold before. */
const isAutumn = ({ emergesAfter }: Sowing) => emergesAfter > 100;

export function planSowing(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  sowing: Sowing,
  year: number,
  lastYear: number,
): void {
  const { chance } = stage;
  const startOn = addDays(`${year}-${sowing.md}`, chance.whole(0, 6));
  const batchId = chance.id();
  const cells = sowing.trays * sowing.cells;
  stage.onWorkday(startOn, async (day) => {
    const sourceId = chance.id();
    const seeds = cells * 2;
    const seedGrams = Math.round((seeds / seedsPerGramOf(sowing.plant)) * 1000) / 1000;
    // Some of each year's seed is always left.
    const cleanedGrams = Math.round(seedGrams * (2 + chance.share() * 2) * 10) / 10 + 1;
    await stage.as('grower').sources.addSource(
      stage.sent({
        sourceId,
        plantId: grounds.plant(sowing.plant),
        kind: 'seed-collection',
        rawGrams: Math.round(cleanedGrams * (3 + chance.share() * 3)),
        cleanedGrams,
        storage: 'cold-dry',
        origin: 'wild',
        seedZone: chance.pick(['prairie north', 'prairie south']),
        provenance: chance.pick([
          'railway strip, county line',
          'remnant on the bluff',
          'roadside above the creek',
          'own seed block',
        ]),
        gathered: `${Number(day.slice(0, 4)) - 1}-autumn`,
        collector: 'Odalys Fennmark',
      }),
    );
    const { versionId, position } = await currentProtocol(stage, sowing.plant, 'seed');
    await stage.as('grower').propagation.startBatch(
      stage.sent({
        protocolVersionId: versionId,
        stagePosition: isAutumn(sowing) ? 0 : position('sowing'),
        batchId,
        plantId: grounds.plant(sowing.plant),
        sourceId,
        method: 'seed',
        unit: 'cell',
        containerId: grounds.container(sowing.tray),
        trays: sowing.trays,
        seedsSown: seeds,
        seedGrams,
        placeId: grounds.place(isAutumn(sowing) ? 'CF1' : 'H1-A'),
        happenedOn: day,
        targetContainerId: grounds.container(sowing.pot),
        cautiousUnits: Math.floor(cells * 0.4),
        usualUnits: Math.floor(cells * 0.6),
        readyOn: addDays(day, sowing.emergesAfter + 100),
      }),
    );
  });

  const full = Math.round(cells * (sowing.share + (chance.share() - 0.5) * 0.12));
  const emergedOn = addDays(startOn, sowing.emergesAfter);
  const counted = (on: string, emergedUnits: number, countKind: 'counted' | 'sampled' | 'estimated') =>
    stage.onWorkday(
      on,
      async (day) =>
        void (await stage
          .as('crew')
          .propagation.countBatch(stage.sent({ batchId, emergedUnits, countKind, happenedOn: day }))),
    );
  counted(emergedOn, Math.round(full * 0.3), 'estimated');
  counted(addDays(emergedOn, 7), Math.round(full * 0.8), 'counted');
  counted(addDays(emergedOn, 16), full, 'counted');
  // Some trays of the last season are kept over the winter as they are.
  if (year === lastYear && (sowing.plant === 'SCSC' || sowing.plant === 'RUHI' || sowing.plant === 'LIPY')) return;

  const pottedOn = addDays(emergedOn, 42 + chance.whole(0, 6));
  stage.onWorkday(pottedOn, async (day) => {
    const parts = full > 90 ? [0.3, 0.27, 0.22, 0.16] : [0.4, 0.33, 0.22];
    const planted = parts.map((part) => Math.floor(full * part));
    const made = planted.map((units) => ({
      units,
      lot: lots.add({ lotId: chance.id(), plant: sowing.plant, container: sowing.pot, place: 'H2-1', since: day }),
    }));
    await stage.as('crew').propagation.potBatch(
      stage.sent({
        batchId,
        happenedOn: day,
        lots: made.map(({ units, lot }) => ({
          lotId: lot.lotId,
          containerId: grounds.container(sowing.pot),
          placeId: grounds.place('H2-1'),
          unitsOut: units,
          pottedUnits: units,
        })),
      }),
    );
  });
  const closes = addDays(pottedOn, 20);
  stage.onWorkday(closes, async (day) => {
    if (sowing.plant === 'ZIAU' || sowing.plant === 'ECPA')
      await stage
        .as('grower')
        .propagation.keepForSecondWinter(
          stage.sent({ batchId, happenedOn: day, note: 'More may come up after another winter' }),
        );
    else
      await stage
        .as('grower')
        .propagation.closeBatch(stage.sent({ batchId, writeOffCause: 'failed', happenedOn: day, confirmed: true }));
  });
}
