import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import type { Stage } from '../stage.ts';

interface Delivery {
  md: string;
  vendor: string;
  statement: string;
  lines: readonly (readonly [
    plant: string,
    form: 'plugs' | 'bare-root' | 'pots',
    container: string,
    invoiced: number,
    received: number,
  ])[];
  /** What the plugs are potted up into, and after how many days; null leaves them in their trays. */
  potUp: { container: string; after: number } | null;
}

const DELIVERIES: readonly Delivery[] = [
  {
    md: '04-28',
    vendor: 'Marlstone Plug Growers',
    statement: 'no systemic insecticide used, stated in writing',
    lines: [
      ['ASVE', 'plugs', 'plug-50', 100, 98],
      ['CEAM', 'plugs', 'plug-72', 72, 72],
    ],
    potUp: { container: 'pot-1l', after: 20 },
  },
  {
    md: '05-16',
    vendor: 'Hollow Creek Perennials',
    statement: 'not stated',
    lines: [
      ['SYLA', 'plugs', 'plug-72', 72, 70],
      ['CABR', 'plugs', 'plug-72', 144, 144],
    ],
    potUp: { container: 'pot-9cm', after: 15 },
  },
  {
    md: '04-08',
    vendor: 'Bluestem Root Yard',
    statement: 'not stated',
    lines: [['BAAL', 'bare-root', 'bare-root', 40, 37]],
    potUp: { container: 'class-1', after: 12 },
  },
  {
    md: '09-12',
    vendor: 'Marlstone Plug Growers',
    statement: 'no systemic insecticide used, stated in writing',
    lines: [
      ['SCSC', 'plugs', 'plug-72', 144, 144],
      ['PYVI', 'plugs', 'plug-72', 72, 69],
    ],
    potUp: null,
  },
];

export function planDeliveries(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  firstYear: number,
  lastYear: number,
): void {
  for (let year = firstYear; year <= lastYear; year++)
    for (const delivery of DELIVERIES) planDelivery(stage, grounds, lots, delivery, year);
}

function planDelivery(stage: Stage, grounds: Grounds, lots: DemoLots, delivery: Delivery, year: number): void {
  const { chance } = stage;
  const arrivesOn = addDays(`${year}-${delivery.md}`, chance.whole(0, 4));
  const lines = delivery.lines.map(([plant, form, container, invoicedUnits, receivedUnits]) => ({
    lotId: chance.id(),
    plant,
    form,
    container,
    invoicedUnits,
    receivedUnits,
  }));
  stage.onWorkday(arrivesOn, async (day) => {
    await stage.as('grower').stock.receiveBought(
      stage.sent({
        happenedOn: day,
        vendor: delivery.vendor,
        pesticideStatement: delivery.statement,
        lines: lines.map(({ lotId, plant, form, container, invoicedUnits, receivedUnits }) => ({
          lotId,
          plantId: grounds.plant(plant),
          form,
          containerId: grounds.container(container),
          placeId: grounds.place('Q'),
          invoicedUnits,
          receivedUnits,
          vendorLot: `${delivery.vendor.slice(0, 2).toUpperCase()}${chance.whole(1000, 9999)}`,
          origin: 'cultivated' as const,
          ...(form === 'plugs' && delivery.statement !== 'not stated'
            ? { sown: `${day.slice(0, 4)}-02`, germinationDays: 18 }
            : {}),
        })),
      }),
    );
  });
  stage.onWorkday(addDays(arrivesOn, 10), async (day) => {
    for (const { lotId } of lines)
      await stage
        .as('grower')
        .stock.releaseLot(
          stage.sent({ lotId, reason: 'quarantine', releaseReason: 'Looked over twice, clean', happenedOn: day }),
        );
    const toPlaceId = grounds.place(delivery.potUp ? 'H2-2' : 'CF2');
    await stage
      .as('crew')
      .stock.moveMany(stage.sent({ lotIds: lines.map(({ lotId }) => lotId), toPlaceId, happenedOn: day }));
    if (!delivery.potUp)
      for (const line of lines)
        lots.add({ lotId: line.lotId, plant: line.plant, container: line.container, place: 'CF2', since: arrivesOn });
  });
  const { potUp } = delivery;
  if (!potUp) return;
  stage.onWorkday(addDays(arrivesOn, potUp.after), async (day) => {
    for (const line of lines) {
      const lot = lots.add({
        lotId: chance.id(),
        plant: line.plant,
        container: potUp.container,
        place: 'Y-N',
        since: day,
      });
      await stage.as('crew').stock.potUpLot(
        stage.sent({
          lotId: line.lotId,
          happenedOn: day,
          into: [
            {
              lotId: lot.lotId,
              containerId: grounds.container(potUp.container),
              placeId: grounds.place('Y-N'),
              units: line.receivedUnits,
              readyOn: addDays(day, 42),
            },
          ],
        }),
      );
    }
  });
}
