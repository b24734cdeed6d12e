import type { BatchUnit, CountKind, LossCause, PotBand, PropagationMethod } from '@rootclock/domain';
import { plural } from '../words.ts';

export const methods: Record<PropagationMethod, string> = {
  seed: 'seed',
  cutting: 'cuttings',
  'root-cutting': 'root cuttings',
  division: 'divisions',
};
export const unitNames: Record<BatchUnit, string> = { cell: 'cells', tray: 'trays', piece: 'pieces', pack: 'packs' };
const unitForms: Record<BatchUnit, { one: string; other: string }> = {
  cell: { one: '# cell', other: '# cells' },
  tray: { one: '# tray', other: '# trays' },
  piece: { one: '# piece', other: '# pieces' },
  pack: { one: '# pack', other: '# packs' },
};
export const units = (count: number, unit: BatchUnit): string => plural(count, unitForms[unit]);
export const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });
export const countKinds: Record<CountKind, string> = { counted: 'counted', sampled: 'sampled', estimated: 'estimated' };
export const causes: Record<LossCause, string> = {
  'looks-dead': 'looks dead',
  winter: 'winter',
  drought: 'drought',
  rot: 'rot',
  pests: 'pests',
  animals: 'animals',
  weather: 'weather',
  mishandled: 'mishandled',
  discarded: 'discarded',
  failed: 'never came up or rooted',
  unknown: 'nobody knows',
};
export const bands: Record<PotBand, string> = {
  past: 'past its day',
  due: 'due',
  coming: 'coming up',
  ample: 'has time',
  unlimited: 'no limit',
};
