import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import { currentProtocol } from '../protocol.ts';
import type { Stage } from '../stage.ts';

interface Packs {
  plant: string;
  md: string;
  packs: number;
  grams: number;
  seeds: number;
  pot: string;
  tray: string;
  cells: number;
  /** Days after the start on which some are drawn into trays, with the packs used up by it. */
  draws: readonly { after: number; packs: number; trays: number; share: number }[];
}

/** Seed in moist sand in the cold store, drawn in portions. The last packs of one lie there longer than they should. */
const PACKS: readonly Packs[] = [
  {
    plant: 'ASIN',
    md: '01-18',
    packs: 6,
    grams: 9,
    seeds: 900,
    pot: 'pot-1l',
    tray: 'plug-72',
    cells: 72,
    draws: [
      { after: 44, packs: 2, trays: 1, share: 0.81 },
      { after: 72, packs: 2, trays: 1, share: 0.77 },
    ],
  },
  {
    plant: 'PEDI',
    md: '01-25',
    packs: 4,
    grams: 1.5,
    seeds: 1200,
    pot: 'tall-1l',
    tray: 'plug-72',
    cells: 72,
    draws: [
      { after: 40, packs: 1, trays: 1, share: 0.7 },
      { after: 48, packs: 3, trays: 1, share: 0.66 },
    ],
  },
];

export function planPacks(stage: Stage, grounds: Grounds, lots: DemoLots, year: number): void {
  for (const packs of PACKS) planOne(stage, grounds, lots, packs, year);
}

function planOne(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  { plant, md, packs, grams, seeds, pot, tray, cells, draws }: Packs,
  year: number,
): void {
  const { chance } = stage;
  const sourceId = chance.id();
  const packsId = chance.id();
  const startOn = addDays(`${year}-${md}`, chance.whole(0, 4));
  stage.onWorkday(startOn, async (day) => {
    await stage.as('grower').sources.addSource(
      stage.sent({
        sourceId,
        plantId: grounds.plant(plant),
        kind: 'seed-collection',
        origin: 'wild',
        seedZone: 'prairie north',
        provenance: 'remnant on the bluff',
        gathered: `${year - 1}-autumn`,
        collector: 'Odalys Fennmark',
        cleanedGrams: grams * 2,
        purity: 0.92,
        storage: 'cold-dry',
        storedOn: day,
      }),
    );
    const { versionId } = await currentProtocol(stage, plant, 'seed');
    await stage.as('grower').propagation.startBatch(
      stage.sent({
        batchId: packsId,
        plantId: grounds.plant(plant),
        sourceId,
        method: 'seed',
        protocolVersionId: versionId,
        unit: 'pack',
        containerId: null,
        units: packs,
        seedsSown: seeds,
        seedGrams: grams,
        placeId: grounds.place('H1-B'),
        happenedOn: day,
        targetContainerId: grounds.container(pot),
        note: 'In moist sand in the cold store',
      }),
    );
  });
  for (const draw of draws) {
    const batchId = chance.id();
    const drawnOn = addDays(startOn, draw.after);
    const units = draw.trays * cells;
    const up = Math.round(units * draw.share);
    stage.onWorkday(drawnOn, async (day) => {
      const { versionId } = await currentProtocol(stage, plant, 'seed');
      await stage.as('crew').propagation.startBatch(
        stage.sent({
          batchId,
          plantId: grounds.plant(plant),
          sourceId,
          method: 'seed',
          protocolVersionId: versionId,
          unit: 'cell',
          containerId: grounds.container(tray),
          trays: draw.trays,
          seedsSown: units * 2,
          fromPacks: { batchId: packsId, units: draw.packs },
          placeId: grounds.place('H1-A'),
          happenedOn: day,
          targetContainerId: grounds.container(pot),
          cautiousUnits: Math.floor(units * 0.45),
          usualUnits: Math.floor(units * 0.65),
          readyOn: addDays(day, 110),
        }),
      );
    });
    for (const [after, alive] of [
      [11, 0.35],
      [18, 0.85],
      [30, 1],
    ] as const) {
      stage.onWorkday(
        addDays(drawnOn, after),
        async (day) =>
          void (await stage
            .as('crew')
            .propagation.countBatch(
              stage.sent({ batchId, emergedUnits: Math.round(up * alive), countKind: 'counted', happenedOn: day }),
            )),
      );
    }
    stage.onWorkday(addDays(drawnOn, 62), async (day) => {
      const lot = lots.add({ lotId: chance.id(), plant, container: pot, place: 'H2-1', since: day });
      await stage.as('crew').propagation.potBatch(
        stage.sent({
          batchId,
          happenedOn: day,
          lots: [
            {
              lotId: lot.lotId,
              containerId: grounds.container(pot),
              placeId: grounds.place('H2-1'),
              unitsOut: up,
              pottedUnits: up,
            },
          ],
        }),
      );
      await stage
        .as('crew')
        .propagation.closeBatch(stage.sent({ batchId, writeOffCause: 'failed', happenedOn: day, confirmed: true }));
    });
  }
}
