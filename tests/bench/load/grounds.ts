// What a generated history happens on: places, sources, clients with sites, and which plants go into which pots.
import { toDayNumber } from '@rootclock/domain';
import type { Chance } from '@rootclock/server/demo/random';
import type pg from 'pg';
import type { Sheets } from './copy.ts';
import { written } from './ledger.ts';

/** The day on which everything is measured, in the growing season of the Upper Midwest, and the day the books begin. */
export const TODAY = '2026-05-20';
export const FIRST_YEAR = 2014;
export const today = toDayNumber(TODAY);
export const firstDay = toDayNumber(`${FIRST_YEAR}-03-01`);

interface Plant {
  id: string;
  code: string;
  dormantMonths: number[];
}

export interface Grounds {
  nurseryId: string;
  plants: Plant[];
  pots: { id: string; code: string }[];
  trayId: string;
  /** Where pots stand; staging and quarantine are apart. */
  benches: string[];
  /** The sources of a plant that were there on a day. */
  sourcesOf(plantId: string, day: number): string[];
  clients: { id: string; siteId: string }[];
  /** The next code of a plant and year. What lives on has numbers of its own, so that a shorter history does not change them. */
  code(plantCode: string, day: number, live: boolean): string;
  /** Writes down how far the numbers went. */
  closeCodes(): void;
}

const POTS = ['cone-164', 'pot-9cm', 'band-23cm', 'pot-1l', 'tall-1l', 'pot-2l', 'class-1'];
/** Numbers of closed history begin here. */
const HISTORY_CODES = 1000;

export async function layGrounds(
  client: pg.Client,
  sheets: Sheets,
  nurseryId: string,
  chance: Chance,
): Promise<Grounds> {
  const { rows: plants } = await client.query<Plant>(
    'SELECT id::text, code, dormant_months AS "dormantMonths" FROM plant WHERE nursery_id = $1 ORDER BY code',
    [nurseryId],
  );
  const { rows: containers } = await client.query<{ id: string; code: string }>(
    'SELECT id::text, code FROM container WHERE nursery_id = $1',
    [nurseryId],
  );
  const container = (code: string) => {
    const found = containers.find((each) => each.code === code);
    if (!found) throw new Error(`the reference data has no container ${code}`);
    return found;
  };
  const codes = codeBook(sheets, nurseryId);
  return {
    nurseryId,
    plants,
    pots: POTS.map(container),
    trayId: container('plug-72').id,
    benches: addPlaces(sheets, nurseryId, chance),
    sourcesOf: addSources(sheets, nurseryId, chance, plants, codes.code),
    clients: addClients(sheets, nurseryId, chance),
    ...codes,
  };
}

function codeBook(sheets: Sheets, nurseryId: string): Pick<Grounds, 'code' | 'closeCodes'> {
  const counter = sheets.open('code_counter', 'nursery_id, prefix, last');
  const last = new Map<string, { live: number; closed: number }>();
  return {
    code: (plantCode, day, live) => {
      const prefix = `${plantCode}-${written(day).slice(2, 4)}`;
      const numbers = last.get(prefix) ?? { live: 0, closed: HISTORY_CODES };
      const number = live ? ++numbers.live : ++numbers.closed;
      if (numbers.live > HISTORY_CODES) throw new Error(`more than ${HISTORY_CODES} living lots of ${prefix}`);
      last.set(prefix, numbers);
      return `${prefix}-${String(number).padStart(3, '0')}`;
    },
    closeCodes: () => {
      for (const [prefix, { live, closed }] of last) counter(nurseryId, prefix, Math.max(live, closed));
    },
  };
}

function addPlaces(sheets: Sheets, nurseryId: string, chance: Chance): string[] {
  const place = sheets.open('place', 'nursery_id, id, parent_id, code, name, kind, winter_cover');
  const add = (code: string, kind: string, cover: boolean, parentId: string | null = null) => {
    const id = chance.id();
    place(nurseryId, id, parentId, code, code, kind, cover);
    return id;
  };
  const numbers = (most: number) => Array.from({ length: most }, (_, index) => index + 1);
  const inHouses = numbers(4).flatMap((house) => {
    const houseId = add(`H${house}`, 'house', house < 3);
    return numbers(12).map((bench) => add(`H${house}-${bench}`, 'bench', house < 3, houseId));
  });
  const outside = numbers(20).map((block) => add(`Y${block}`, 'yard', false));
  const frames = numbers(6).map((frame) => add(`F${frame}`, 'cold-frame', true));
  add('STAGE', 'staging', false);
  add('QUAR', 'quarantine', false);
  return [...inHouses, ...outside, ...frames];
}

/** Two sources a plant and year, gathered in the autumn before. */
function addSources(
  sheets: Sheets,
  nurseryId: string,
  chance: Chance,
  plants: Plant[],
  code: Grounds['code'],
): Grounds['sourcesOf'] {
  const source = sheets.open(
    'source',
    'nursery_id, id, code, plant_id, kind, provenance, seed_zone, origin, gathered_on, gathered_precision',
  );
  const years = Number(TODAY.slice(0, 4)) - FIRST_YEAR + 1;
  const ofPlant = new Map(
    plants.map((plant) => [
      plant.id,
      Array.from({ length: 2 * years }, (_, index) => {
        const id = chance.id();
        const gathered = toDayNumber(`${FIRST_YEAR + Math.floor(index / 2) - 1}-10-01`);
        const kind = chance.pick(['seed-collection', 'bought-seed', 'mother-plants']);
        source(
          nurseryId,
          id,
          code(plant.code, gathered, false),
          plant.id,
          kind,
          'an invented prairie',
          chance.pick(['zone A', 'zone B']),
          chance.pick(['wild', 'cultivated']),
          written(gathered),
          'month',
        );
        return id;
      }),
    ]),
  );
  return (plantId, day) =>
    (ofPlant.get(plantId) ?? []).slice(0, 2 * (Number(written(day).slice(0, 4)) - FIRST_YEAR + 1));
}

function addClients(sheets: Sheets, nurseryId: string, chance: Chance): Grounds['clients'] {
  const client = sheets.open('client', 'nursery_id, id, name, lead_days');
  const site = sheets.open('site', 'nursery_id, id, client_id, name');
  return Array.from({ length: 300 }, (_, index) => {
    const id = chance.id();
    const siteId = chance.id();
    client(nurseryId, id, `Client ${index + 1}`, chance.whole(0, 14));
    site(nurseryId, siteId, id, `Garden of client ${index + 1}`);
    return { id, siteId };
  });
}
