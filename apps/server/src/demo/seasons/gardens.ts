import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { anyOf } from '../random.ts';
import type { Stage } from '../stage.ts';
import { addClients, type Client } from './clients.ts';
import { type Mix, planOrder } from './garden-orders.ts';

/** What gardens ask for: items that are usually there, in the season's habit. */
const MIXES = [
  [
    ['ASTU', 'tall-1l', 14],
    ['LIAS', 'tall-1l', 12],
    ['ECPA', 'band-23cm', 10],
    ['SCSC', 'pot-9cm', 24],
  ],
  [
    ['ASIN', 'pot-1l', 18],
    ['MOFI', 'pot-1l', 14],
    ['RUHI', 'pot-9cm', 20],
  ],
  [
    ['ASSY', 'tall-1l', 10],
    ['ECPU', 'pot-1l', 16],
    ['SYNO', 'pot-1l', 12],
    ['SCSC', 'pot-9cm', 18],
  ],
  [
    ['LIPY', 'tall-1l', 12],
    ['PEDI', 'tall-1l', 10],
    ['ASVE', 'pot-1l', 15],
  ],
  [
    ['MOFI', 'pot-1l', 10],
    ['SYLA', 'pot-9cm', 18],
    ['ASTU', 'tall-1l', 8],
    ['CABR', 'pot-9cm', 30],
  ],
] as const;

export async function planGardens(stage: Stage, grounds: Grounds, firstYear: number, lastYear: number): Promise<void> {
  const clients = await addClients(stage);
  for (let year = firstYear; year <= lastYear + 1; year++) {
    const days = ['05-08', '05-20', '06-03', '09-10', '09-19', '09-27', '10-06'];
    days.forEach((md, i) =>
      planOrder(
        stage,
        grounds,
        anyOf(clients, i + year),
        `${year}-${md}`,
        i % 3 === 2 ? 'pickup' : 'installation',
        anyOf(MIXES, i + year),
      ),
    );
  }
  planForward(stage, grounds, clients);
}

/** Orders that lie ahead of today whatever the day: one to be pulled soon, one grown under contract, one that cannot be met. */
function planForward(stage: Stage, grounds: Grounds, clients: readonly Client[]): void {
  const { chance, today } = stage;
  const ahead = [
    {
      days: 4,
      kind: 'pickup' as const,
      mix: [
        ['SCSC', 'pot-9cm', 12],
        ['ECPU', 'pot-1l', 6],
      ] as Mix,
    },
    {
      days: 160,
      kind: 'installation' as const,
      mix: [
        ['ASTU', 'tall-1l', 30],
        ['LIAS', 'tall-1l', 20],
        ['RUHI', 'pot-9cm', 25],
      ] as Mix,
    },
    {
      days: 175,
      kind: 'contract-growing' as const,
      mix: [
        ['LUPE', 'band-14cm', 60],
        ['ASVE', 'pot-1l', 40],
      ] as Mix,
    },
    {
      days: 190,
      kind: 'installation' as const,
      mix: [
        ['BAAL', 'class-1', 18],
        ['ASCU', 'pot-1l', 6],
        ['PEDI', 'tall-1l', 24],
      ] as Mix,
    },
  ];
  ahead.forEach(({ days, kind, mix }, i) =>
    stage.on(addDays(today, -12 + i), async () => {
      const client = anyOf(clients, i);
      await stage.as('grower').orders.addOrder(
        stage.sent({
          orderId: chance.id(),
          clientId: client.clientId,
          siteId: client.siteId,
          kind,
          dueOn: addDays(today, days),
          lines: mix.map(([plant, container, units]) => ({
            lineId: chance.id(),
            plantId: grounds.plant(plant),
            containerId: grounds.container(container),
            units,
            bedId: kind === 'pickup' ? null : client.bedId,
          })),
        }),
      );
    }),
  );
}
