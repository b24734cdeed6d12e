import type { Stage } from './stage.ts';

/** What the scenario remembers of a lot it made. */
export interface DemoLot {
  lotId: string;
  plant: string;
  container: string;
  place: string;
  since: string;
}

/** Lots that stand, by what they are; the scenario looks units up where it needs them, as a person would. */
export class DemoLots {
  readonly all: DemoLot[] = [];

  add(lot: DemoLot): DemoLot {
    this.all.push(lot);
    return lot;
  }

  remove(lotId: string): void {
    const index = this.all.findIndex((lot) => lot.lotId === lotId);
    if (index >= 0) this.all.splice(index, 1);
  }
}

/** What stands of a lot: what nobody was promised and nothing holds back, and where all of it is. */
export interface StandingUnits {
  free: number;
  onHand: number;
  places: { placeId: string; units: number }[];
}

const NOTHING: StandingUnits = { free: 0, onHand: 0, places: [] };

/** Every open lot as the stock table shows it, read once for an occasion that looks at many. */
export async function readStanding(stage: Stage): Promise<(lotId: string) => StandingUnits> {
  const standing = new Map<string, StandingUnits>();
  for (let page = 1; ; page++) {
    const { rows, total, perPage } = await stage.as('viewer').stock.listLots({ page, perPage: 200, sort: 'code' });
    for (const row of rows)
      standing.set(row.lotId, {
        free: row.freeUnits,
        onHand: row.onHandUnits,
        places: row.places.map(({ placeId, units }) => ({ placeId, units })),
      });
    if (page * perPage >= total) return (lotId) => standing.get(lotId) ?? NOTHING;
  }
}
