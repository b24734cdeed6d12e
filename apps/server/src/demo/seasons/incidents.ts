import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { type DemoLots, readStanding } from '../lots.ts';
import type { Stage } from '../stage.ts';

/** What goes wrong in a nursery: a slip that is taken back, a label that was wrong, leftovers put together, a tray spilled. */
export function planIncidents(stage: Stage, grounds: Grounds, lots: DemoLots): void {
  const { chance, today } = stage;

  stage.on(addDays(today, -75), async (day) => {
    const here = await firstStanding(stage, lots, 20);
    if (!here) return;
    const mistake = stage.sent({
      lotId: here.lotId,
      units: Math.min(18, here.units),
      placeId: here.placeId,
      cause: 'animals' as const,
      happenedOn: day,
      note: 'Wrong bench',
    });
    await stage.as('crew').stock.loseFromLot(mistake);
    await stage
      .as('crew')
      .stock.reverseEntry(stage.sent({ entryId: mistake.commandId, note: 'It was the other bench' }));
  });

  stage.on(addDays(today, -60), async (day) => {
    const mislabelled = chance.id();
    await stage.as('grower').stock.receiveBought(
      stage.sent({
        happenedOn: day,
        vendor: 'Hollow Creek Perennials',
        pesticideStatement: 'not stated',
        quarantine: false,
        lines: [
          {
            lotId: mislabelled,
            plantId: grounds.plant('ASTU'),
            form: 'pots',
            containerId: grounds.container('pot-1l'),
            placeId: grounds.place('Q'),
            invoicedUnits: 20,
            receivedUnits: 20,
            note: 'Sold to us as butterfly weed',
          },
        ],
      }),
    );
    stage.on(addDays(day, 9), async (later) => {
      await stage.as('grower').stock.reIdentifyLot(
        stage.sent({
          lotId: mislabelled,
          plantId: grounds.plant('ASCU'),
          happenedOn: later,
          note: 'Flowers and leaves are those of the tropical milkweed',
        }),
      );
      await stage
        .as('grower')
        .stock.holdMany(
          stage.sent({ lotIds: [mislabelled], reason: 'quarantine', happenedOn: later, note: 'Not to be planted out' }),
        );
    });
  });

  stage.on(addDays(today, -40), async (day) => {
    const here = await firstStanding(stage, lots, 30);
    if (!here) return;
    await stage.as('grower').stock.splitLot(
      stage.sent({
        lotId: here.lotId,
        placeId: here.placeId,
        happenedOn: day,
        note: 'The stronger ones',
        into: [{ lotId: chance.id(), placeId: grounds.place('Y-W'), units: 10 }],
      }),
    );
  });

  stage.on(addDays(today, -20), async (day) => {
    const here = await firstStanding(stage, lots, 12);
    if (!here) return;
    await stage.as('crew').stock.countLot(
      stage.sent({
        lotId: here.lotId,
        placeId: here.placeId,
        countedUnits: here.units - 2,
        countKind: 'counted',
        happenedOn: day,
      }),
    );
  });
}

/** The first lot of which at least so many stand unpromised at one place. */
async function firstStanding(
  stage: Stage,
  lots: DemoLots,
  least: number,
): Promise<{ lotId: string; placeId: string; units: number } | null> {
  const unitsOf = await readStanding(stage);
  for (const { lotId } of lots.all) {
    const { free, places } = unitsOf(lotId);
    const [here, ...elsewhere] = places;
    if (here && elsewhere.length === 0 && free >= least) return { lotId, ...here };
  }
  return null;
}
