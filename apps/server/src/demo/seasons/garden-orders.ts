import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { anyOf } from '../random.ts';
import type { Stage } from '../stage.ts';
import type { Client } from './clients.ts';

export type Mix = readonly (readonly [plant: string, container: string, units: number])[];

/** Ordered some weeks ahead, pulled the day before, planted on the day; some come back unplanted. What lies after today stays promised. */
export function planOrder(
  stage: Stage,
  grounds: Grounds,
  client: Client,
  dueOn: string,
  kind: 'installation' | 'pickup',
  mix: Mix,
): void {
  const { chance } = stage;
  const orderId = chance.id();
  const orderedOn = addDays(dueOn, -chance.whole(40, 120));
  const factor = 0.8 + chance.share() * 0.5;
  const comesBack = chance.share() < 0.3;
  const cancelled = chance.share() < 0.06;
  stage.on(orderedOn, async () => {
    await stage.as('grower').orders.addOrder(
      stage.sent({
        orderId,
        clientId: client.clientId,
        siteId: client.siteId,
        kind,
        dueOn,
        lines: mix.map(([plant, container, units], i) => ({
          lineId: chance.id(),
          plantId: grounds.plant(plant),
          containerId: grounds.container(container),
          units: Math.max(3, Math.round(units * factor)),
          bedId: kind === 'installation' ? client.bedId : null,
          untreated: plant.startsWith('AS'),
          wildType: i === 0,
          alternatives:
            plant === 'ASTU'
              ? [{ plantId: grounds.plant('ASIN'), containerId: grounds.container('pot-1l'), penalty: 3 }]
              : [],
        })),
      }),
    );
  });
  if (cancelled) {
    stage.on(
      addDays(dueOn, -20),
      async (day) =>
        void (await stage
          .as('owner')
          .gardens.cancelOrder(stage.sent({ orderId, happenedOn: day, note: 'The client put the garden off' }))),
    );
    return;
  }
  stage.on(addDays(dueOn, -1), async (day) => {
    await stage.as('grower').gardens.issuePullList(stage.sent({ orderId }));
    const { rows } = await stage.as('crew').gardens.readPullList({ orderId });
    if (rows.length === 0) return;
    await stage.as('crew').gardens.pullForOrder(
      stage.sent({
        orderId,
        happenedOn: day,
        confirmed: true,
        rows: rows.map(({ lineId, lotId, placeId, units }) => ({ lineId, lotId, placeId, units })),
      }),
    );
  });
  stage.on(dueOn, async (day) => {
    const { staged } = await stage.as('crew').gardens.readPullList({ orderId });
    if (staged.length === 0) {
      await stage
        .as('owner')
        .gardens.cancelOrder(stage.sent({ orderId, happenedOn: day, note: 'Nothing of it was ready in time' }));
      return;
    }
    const all = staged.map(({ lineId, lotId, units }) => ({ lineId, lotId, units }));
    if (kind === 'pickup') {
      await stage.as('crew').gardens.handOver(stage.sent({ orderId, happenedOn: day, rows: all }));
    } else {
      const first = anyOf(all, 0);
      const keptBack = comesBack && first.units > 4 ? 3 : 0;
      await stage.as('crew').gardens.plantOrder(
        stage.sent({
          orderId,
          happenedOn: day,
          rows: all.map((row, i) => ({ ...row, units: i === 0 ? row.units - keptBack : row.units })),
        }),
      );
      if (keptBack > 0) {
        await stage.as('crew').gardens.returnFromOrder(
          stage.sent({
            orderId,
            happenedOn: day,
            placeId: grounds.place('Q'),
            cause: 'mishandled',
            rows: [{ lineId: first.lineId, lotId: first.lotId, returnedUnits: 2, lostUnits: 1 }],
          }),
        );
      }
    }
    await stage.as('grower').orders.finishOrder(stage.sent({ orderId }));
  });
}
