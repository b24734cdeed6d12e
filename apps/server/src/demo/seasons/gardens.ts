import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { anyOf } from '../random.ts';
import type { Stage } from '../stage.ts';

const CLIENTS = [
  ['Wren Hallowell', 'IA', false], ['Orchard Lane school garden', 'WI', false], ['Pemberline village green', 'MN', false], ['Tansy Overmeer', 'IA', true],
  ['Little Fen chapel', 'WI', false], ['Bram Ostrander', 'MN', false], ['Copperfield cohousing', 'IL', false], ['Juniper Ashgrove', 'IA', false],
] as const;

/** What gardens ask for: items that are usually there, in the season's habit. */
const MIXES = [
  [['ASTU', 'tall-1l', 14], ['LIAS', 'tall-1l', 12], ['ECPA', 'band-23cm', 10], ['SCSC', 'pot-9cm', 24]],
  [['ASIN', 'pot-1l', 18], ['MOFI', 'pot-1l', 14], ['RUHI', 'pot-9cm', 20]],
  [['ASSY', 'tall-1l', 10], ['ECPU', 'pot-1l', 16], ['SYNO', 'pot-1l', 12], ['SCSC', 'pot-9cm', 18]],
  [['LIPY', 'tall-1l', 12], ['PEDI', 'tall-1l', 10], ['ASVE', 'pot-1l', 15]],
  [['MOFI', 'pot-1l', 10], ['SYLA', 'pot-9cm', 18], ['ASTU', 'tall-1l', 8], ['CABR', 'pot-9cm', 30]],
] as const;

interface Client {
  clientId: string;
  siteId: string;
  bedId: string;
}

export async function planGardens(stage: Stage, grounds: Grounds, firstYear: number, lastYear: number): Promise<void> {
  const clients = await addClients(stage);
  for (let year = firstYear; year <= lastYear + 1; year++) {
    const days = ['05-08', '05-20', '06-03', '09-10', '09-19', '09-27', '10-06'];
    days.forEach((md, i) => planOrder(stage, grounds, anyOf(clients, i + year), `${year}-${md}`, i % 3 === 2 ? 'pickup' : 'installation', anyOf(MIXES, i + year)));
  }
  planForward(stage, grounds, clients);
}

async function addClients(stage: Stage): Promise<Client[]> {
  const clients: Client[] = [];
  for (const [name, region, livestockNear] of CLIENTS) {
    const client = { clientId: stage.chance.id(), siteId: stage.chance.id(), bedId: stage.chance.id() };
    await stage.as('grower').gardens.addClient(stage.sent({ clientId: client.clientId, name, email: `${name.toLowerCase().replaceAll(' ', '.')}@demo.example`, leadDays: 7 }));
    await stage.as('grower').gardens.addSite(stage.sent({ siteId: client.siteId, clientId: client.clientId, name: 'Front beds', address: 'an invented address', region, livestockNear }));
    await stage.as('grower').gardens.addBed(stage.sent({ bedId: client.bedId, siteId: client.siteId, name: 'Sunny bed', areaCm2: 10_000 * stage.chance.whole(8, 30), sun: null }));
    clients.push(client);
  }
  return clients;
}

type Mix = readonly (readonly [plant: string, container: string, units: number])[];

/** Ordered some weeks ahead, pulled the day before, planted on the day; some come back unplanted. What lies after today stays promised. */
function planOrder(stage: Stage, grounds: Grounds, client: Client, dueOn: string, kind: 'installation' | 'pickup', mix: Mix): void {
  const { chance } = stage;
  const orderId = chance.id();
  const orderedOn = addDays(dueOn, -chance.whole(40, 120));
  const factor = 0.8 + chance.share() * 0.5;
  const comesBack = chance.share() < 0.3;
  const cancelled = chance.share() < 0.06;
  stage.on(orderedOn, async () => {
    await stage.as('grower').gardens.addOrder(stage.sent({
      orderId, clientId: client.clientId, siteId: client.siteId, kind, dueOn,
      lines: mix.map(([plant, container, units], i) => ({
        lineId: chance.id(), plantId: grounds.plant(plant), containerId: grounds.container(container), units: Math.max(3, Math.round(units * factor)), bedId: kind === 'installation' ? client.bedId : null,
        untreated: plant.startsWith('AS'), wildType: i === 0,
        alternatives: plant === 'ASTU' ? [{ plantId: grounds.plant('ASIN'), containerId: grounds.container('pot-1l'), penalty: 3 }] : [],
      })),
    }));
  });
  if (cancelled) {
    stage.on(addDays(dueOn, -20), async (day) => void (await stage.as('owner').gardens.cancelOrder(stage.sent({ orderId, happenedOn: day, note: 'The client put the garden off' }))));
    return;
  }
  stage.on(addDays(dueOn, -1), async (day) => {
    await stage.as('grower').gardens.issuePullList(stage.sent({ orderId }));
    const { rows } = await stage.as('crew').gardens.readPullList({ orderId });
    if (rows.length === 0) return;
    await stage.as('crew').gardens.pullForOrder(stage.sent({
      orderId, happenedOn: day, confirmed: true, rows: rows.map(({ lineId, lotId, placeId, units }) => ({ lineId, lotId, placeId, units })),
    }));
  });
  stage.on(dueOn, async (day) => {
    const { staged } = await stage.as('crew').gardens.readPullList({ orderId });
    if (staged.length === 0) {
      await stage.as('owner').gardens.cancelOrder(stage.sent({ orderId, happenedOn: day, note: 'Nothing of it was ready in time' }));
      return;
    }
    const all = staged.map(({ lineId, lotId, units }) => ({ lineId, lotId, units }));
    if (kind === 'pickup') {
      await stage.as('crew').gardens.handOver(stage.sent({ orderId, happenedOn: day, rows: all }));
    } else {
      const first = anyOf(all, 0);
      const keptBack = comesBack && first.units > 4 ? 3 : 0;
      await stage.as('crew').gardens.plantOrder(stage.sent({ orderId, happenedOn: day, rows: all.map((row, i) => ({ ...row, units: i === 0 ? row.units - keptBack : row.units })) }));
      if (keptBack > 0) {
        await stage.as('crew').gardens.returnFromOrder(stage.sent({
          orderId, happenedOn: day, placeId: grounds.place('Q'), cause: 'mishandled', rows: [{ lineId: first.lineId, lotId: first.lotId, returnedUnits: 2, lostUnits: 1 }],
        }));
      }
    }
    await stage.as('grower').gardens.finishOrder(stage.sent({ orderId }));
  });
}

/** Orders that lie ahead of today whatever the day: one to be pulled soon, one grown under contract, one that cannot be met. */
function planForward(stage: Stage, grounds: Grounds, clients: readonly Client[]): void {
  const { chance, today } = stage;
  const ahead = [
    { days: 4, kind: 'pickup' as const, mix: [['SCSC', 'pot-9cm', 12], ['ECPU', 'pot-1l', 6]] as Mix },
    { days: 160, kind: 'installation' as const, mix: [['ASTU', 'tall-1l', 30], ['LIAS', 'tall-1l', 20], ['RUHI', 'pot-9cm', 25]] as Mix },
    { days: 175, kind: 'contract-growing' as const, mix: [['LUPE', 'band-14cm', 60], ['ASVE', 'pot-1l', 40]] as Mix },
    { days: 190, kind: 'installation' as const, mix: [['BAAL', 'class-1', 18], ['ASCU', 'pot-1l', 6], ['PEDI', 'tall-1l', 24]] as Mix },
  ];
  ahead.forEach(({ days, kind, mix }, i) => stage.on(addDays(today, -12 + i), async () => {
    const client = anyOf(clients, i);
    await stage.as('grower').gardens.addOrder(stage.sent({
      orderId: chance.id(), clientId: client.clientId, siteId: client.siteId, kind, dueOn: addDays(today, days),
      lines: mix.map(([plant, container, units]) => ({ lineId: chance.id(), plantId: grounds.plant(plant), containerId: grounds.container(container), units, bedId: kind === 'pickup' ? null : client.bedId })),
    }));
  }));
}

/** What this invented nursery lets stand in: another size readily, another native milkweed sooner than a plant of the same habit. */
const SUBSTITUTIONS = [
  { kind: 'another-size', reach: {}, penalty: 2, note: 'Clients mind the size less than the plant' },
  { kind: 'same-genus', reach: { genus: 'Asclepias' }, penalty: 5, note: 'Any milkweed of the region feeds monarchs' },
  { kind: 'same-habit', reach: {}, penalty: 12, note: '' },
] as const;

export function planSubstitutions(stage: Stage): void {
  stage.on(stage.today, async () => {
    for (const rule of SUBSTITUTIONS) await stage.as('grower').gardens.addSubstitutionRule(stage.sent({ ruleId: stage.chance.id(), ...rule }));
  });
}
