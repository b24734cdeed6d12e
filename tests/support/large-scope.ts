// One component of many lots and lines that share plants, as a plan reads it, without a database.
import { chanceFrom } from '../../apps/server/src/demo/random.ts';
import type { Scope, ScopeLine, ScopeSupply } from '../../apps/server/src/features/promises/allocation/scope.ts';

const LOTS_AN_ITEM = 20;
/** Each line takes its own plant and the next ones, so that everything hangs together. */
const TAKES = 4;

export function largeScope(lots: number, lines: number, seed: number): Scope {
  const chance = chanceFrom(seed);
  const items = Math.ceil(lots / LOTS_AN_ITEM);
  const upTo = (most: number) => chance.whole(1, most);
  const supply = (at: number): ScopeSupply => ({
    id: `lot-${at}`,
    kind: 'lot',
    code: `LOT-${at}`,
    item: `plant-${at % items}@pot`,
    plantId: `plant-${at % items}`,
    scientificName: `Planta ${at % items}`,
    containerId: 'pot',
    containerCode: 'P9',
    containerMl: 500,
    cells: null,
    units: upTo(30),
    quarantinedUnits: 0,
    held: false,
    readyOn: '2026-05-01',
    rootChecked: true,
    plantByOn: `2026-0${5 + upTo(4)}-15`,
    plantByState: 'window',
    limitOn: null,
    clockOn: null,
    seedZone: null,
    origin: 'wild',
    isCultivar: false,
    nativeRegions: [],
    sourceKind: 'seed-collection',
    pesticideStatement: null,
    treated: false,
  });
  const line = (at: number): ScopeLine => ({
    id: `line-${at}`,
    orderId: `order-${at}`,
    orderCode: `O-${at}`,
    orderKind: 'pickup',
    clientName: '',
    siteName: null,
    region: null,
    leadDays: 0,
    rank: 1 + at,
    dueOn: `2026-0${5 + upTo(3)}-20`,
    plantId: `plant-${at % items}`,
    scientificName: `Planta ${at % items}`,
    containerCode: 'P9',
    cells: null,
    // About as many are wanted as there are.
    units: upTo(Math.round((30 * lots) / lines)),
    stagedUnits: 0,
    deliveredUnits: 0,
    seedZone: null,
    wildType: false,
    untreated: false,
    nativesOnly: false,
    accepts: Array.from({ length: TAKES }, (_, nth) => ({ item: `plant-${(at + nth) % items}@pot`, penalty: nth })),
    refusedIds: [],
  });
  return {
    today: '2026-05-20',
    horizonOn: '2026-10-31',
    supplies: Array.from({ length: lots }, (_, at) => supply(at)),
    lines: Array.from({ length: lines }, (_, at) => line(at)),
    reservations: [],
    windows: [],
    heirs: [],
  };
}
