import type { BoughtForm, CountKind, HoldReason, PlaceKind, PotBand } from '@rootclock/domain';
import { plural } from '../words.ts';

const placeKinds: Record<PlaceKind, string> = {
  house: 'house',
  bay: 'bay',
  bench: 'bench',
  yard: 'yard block',
  'cold-frame': 'cold frame',
  staging: 'staging area',
  'nursery-bed': 'nursery bed (in the ground)',
  quarantine: 'quarantine',
};
const countKinds: Record<CountKind, string> = { counted: 'counted', sampled: 'sampled', estimated: 'estimated' };
const forms: Record<BoughtForm, string> = { plugs: 'plugs', 'bare-root': 'bare root', pots: 'pots' };
const bands: Record<PotBand, string> = {
  past: 'past its day',
  due: 'due',
  coming: 'coming up',
  ample: 'has time',
  unlimited: 'no limit',
};
const holds: Record<HoldReason, string> = {
  quarantine: 'quarantine',
  treated: 'treated',
  'mother-stock': 'mother stock',
  inspector: 'inspector’s stop',
};

export const words = {
  placeKinds,
  countKinds,
  forms,
  bands,
  holds,
  units: (count: number) => plural(count, { one: '# plant', other: '# plants' }),
  lots: (count: number) => plural(count, { one: '# lot', other: '# lots' }),
  batches: (count: number) => plural(count, { one: '# batch', other: '# batches' }),
  tabs: {
    label: 'Views of the stock',
    board: 'Pot-life board',
    table: 'All lots',
    places: 'Places',
    sources: 'Sources',
    takeIn: 'Take in',
  },
};
