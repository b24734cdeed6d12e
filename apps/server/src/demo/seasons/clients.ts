import type { Stage } from '../stage.ts';

const CLIENTS = [
  ['Wren Hallowell', 'IA', false],
  ['Orchard Lane school garden', 'WI', false],
  ['Pemberline village green', 'MN', false],
  ['Tansy Overmeer', 'IA', true],
  ['Little Fen chapel', 'WI', false],
  ['Bram Ostrander', 'MN', false],
  ['Copperfield cohousing', 'IL', false],
  ['Juniper Ashgrove', 'IA', false],
] as const;

export interface Client {
  clientId: string;
  siteId: string;
  bedId: string;
}

export async function addClients(stage: Stage): Promise<Client[]> {
  const clients: Client[] = [];
  for (const [name, region, livestockNear] of CLIENTS) {
    const client = { clientId: stage.chance.id(), siteId: stage.chance.id(), bedId: stage.chance.id() };
    await stage.as('grower').clients.addClient(
      stage.sent({
        clientId: client.clientId,
        name,
        email: `${name.toLowerCase().replaceAll(' ', '.')}@demo.example`,
        leadDays: 7,
      }),
    );
    await stage.as('grower').clients.addSite(
      stage.sent({
        siteId: client.siteId,
        clientId: client.clientId,
        name: 'Front beds',
        address: 'an invented address',
        region,
        livestockNear,
      }),
    );
    await stage.as('grower').clients.addBed(
      stage.sent({
        bedId: client.bedId,
        siteId: client.siteId,
        name: 'Sunny bed',
        areaCm2: 10_000 * stage.chance.whole(8, 30),
        sun: null,
      }),
    );
    clients.push(client);
  }
  return clients;
}
