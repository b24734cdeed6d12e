import type { BatchUnit, CountKind, LossCause, PotBand, PropagationMethod } from '@rootclock/domain';
import { plural } from '../words.ts';

export const methods: Record<PropagationMethod, string> = {
  seed: 'semilla',
  cutting: 'esquejes',
  'root-cutting': 'esquejes de raíz',
  division: 'divisiones',
};
export const unitNames: Record<BatchUnit, string> = {
  cell: 'alvéolos',
  tray: 'bandejas',
  piece: 'trozos',
  pack: 'paquetes',
};
const unitForms: Record<BatchUnit, { one: string; other: string }> = {
  cell: { one: '# alvéolo', other: '# alvéolos' },
  tray: { one: '# bandeja', other: '# bandejas' },
  piece: { one: '# trozo', other: '# trozos' },
  pack: { one: '# paquete', other: '# paquetes' },
};
export const units = (count: number, unit: BatchUnit): string => plural(count, unitForms[unit]);
export const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });
export const countKinds: Record<CountKind, string> = {
  counted: 'contado',
  sampled: 'por muestra',
  estimated: 'estimado',
};
export const causes: Record<LossCause, string> = {
  'looks-dead': 'parece muerta',
  winter: 'invierno',
  drought: 'sequía',
  rot: 'pudrición',
  pests: 'plagas',
  animals: 'animales',
  weather: 'mal tiempo',
  mishandled: 'mal trato',
  discarded: 'desechada',
  failed: 'no brotó ni enraizó',
  unknown: 'nadie lo sabe',
};
export const bands: Record<PotBand, string> = {
  past: 'pasó su día',
  due: 'toca ya',
  coming: 'se acerca',
  ample: 'tiene tiempo',
  unlimited: 'sin límite',
};
