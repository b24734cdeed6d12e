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

/** What nobody was promised and nothing holds back, and where all of it stands. */
export async function unitsOf(stage: Stage, lotId: string): Promise<{ free: number; onHand: number; held: boolean; places: { placeId: string; units: number }[]; containerCode: string }> {
  const lot = await stage.as('viewer').stock.readLot({ lotId });
  const onHand = lot.standing.reduce((sum, { units }) => sum + units, 0);
  const promised = lot.promised.reduce((sum, { units }) => sum + units, 0);
  const held = lot.holds.some((hold) => hold.releasedOn === null);
  return { free: held ? 0 : Math.max(0, onHand - promised), onHand, held, places: lot.standing.map(({ placeId, units }) => ({ placeId, units })), containerCode: lot.container.code };
}
