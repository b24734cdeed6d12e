import { referenceId } from '../features/plants/reference-load.ts';
import type { Stage } from './stage.ts';

/** What the scenario stands on: ids of plants and containers by their codes, of places by what is painted on them. */
export interface Grounds {
  plant(code: string): string;
  container(code: string): string;
  place(code: string): string;
}

const PLACES = [
  ['H1', 'Propagation house', 'house', null, true],
  ['H1-A', 'Warm bench', 'bench', 'H1', true],
  ['H1-B', 'Cool bench', 'bench', 'H1', true],
  ['H2', 'Potting house', 'house', null, true],
  ['H2-1', 'Bay 1', 'bay', 'H2', true],
  ['H2-2', 'Bay 2', 'bay', 'H2', true],
  ['Y', 'Standing yard', 'yard', null, false],
  ['Y-N', 'Yard, north block', 'yard', 'Y', false],
  ['Y-S', 'Yard, south block', 'yard', 'Y', false],
  ['Y-W', 'Yard, shade cloth', 'yard', 'Y', false],
  ['CF1', 'Cold frame 1', 'cold-frame', null, true],
  ['CF2', 'Cold frame 2', 'cold-frame', null, true],
  ['Q', 'Quarantine corner', 'quarantine', null, false],
  ['LD', 'Loading bay', 'staging', null, false],
  ['NB', 'Mother bed', 'nursery-bed', null, false],
] as const;

/** Square metres that plants can stand on, and the days on which a place is covered, baited and uncovered. */
const BENCHES: Readonly<Record<string, number>> = {
  'H1-A': 16,
  'H1-B': 16,
  'H2-1': 24,
  'H2-2': 24,
  'Y-N': 60,
  'Y-S': 60,
  'Y-W': 40,
  CF1: 14,
  CF2: 14,
};
const WINTER: Readonly<Record<string, { coverMd: string; baitMd: string | null; uncoverMd: string }>> = {
  CF1: { coverMd: '11-15', baitMd: '11-10', uncoverMd: '04-05' },
  CF2: { coverMd: '11-15', baitMd: '11-10', uncoverMd: '04-05' },
  'Y-N': { coverMd: '11-25', baitMd: null, uncoverMd: '04-12' },
};

export async function layGrounds(stage: Stage): Promise<Grounds> {
  await stage.as('owner').plants.loadReference(stage.sent({}));
  await stage.as('owner').propagation.loadReferenceProtocols(stage.sent({}));
  const places = new Map<string, string>();
  for (const [code, name, kind, parent, winterCover] of PLACES) {
    const placeId = stage.chance.id();
    await stage.as('owner').stock.addPlace(
      stage.sent({
        placeId,
        code,
        name,
        kind,
        parentId: parent ? (places.get(parent) ?? null) : null,
        winterCover,
        benchAreaM2: BENCHES[code] ?? null,
        ...WINTER[code],
      }),
    );
    places.set(code, placeId);
  }
  return {
    plant: (code) => referenceId(stage.nurseryId, 'plant', code),
    container: (code) => referenceId(stage.nurseryId, 'container', code),
    place: (code) => {
      const id = places.get(code);
      if (!id) throw new Error(`the demo has no place ${code}`);
      return id;
    },
  };
}
