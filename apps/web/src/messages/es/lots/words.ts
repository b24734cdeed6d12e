import type {
  CountKind,
  EntryKind,
  HoldReason,
  LossCause,
  ObservationKind,
  Outside,
  PlantByState,
  PotBand,
  PotLifeBasis,
  RootBallResult,
  RootHabit,
} from '@rootclock/domain';
import { plural } from '../words.ts';

export const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });
export const lotsCount = (count: number): string => plural(count, { one: '# lote', other: '# lotes' });
export const days = (count: number): string => plural(count, { one: '# día', other: '# días' });

export const bands: Record<PotBand, string> = {
  past: 'pasó su día',
  due: 'toca ya',
  coming: 'se acerca',
  ample: 'tiene tiempo',
  unlimited: 'sin límite',
};
export const states: Record<PlantByState, string> = {
  window: 'el último día de una época de plantación antes del límite',
  'limit-only': 'el límite mismo: no hay épocas de plantación fijadas',
  'no-window': 'el límite mismo: ya no queda época de plantación antes',
  'winter-carry': 'pasa el invierno hasta la próxima época',
  unlimited: 'sin límite',
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
  failed: 'no prendió',
  unknown: 'nadie lo sabe',
};
export const holds: Record<HoldReason, string> = {
  quarantine: 'cuarentena',
  treated: 'tratado',
  'mother-stock': 'plantas madre',
  inspector: 'orden del inspector',
};
export const countKinds: Record<CountKind, string> = {
  counted: 'contado',
  sampled: 'por muestra',
  estimated: 'estimado',
};
export const observations: Record<ObservationKind, string> = {
  'root-ball': 'cepellón',
  bloom: 'en flor',
  pest: 'plaga o enfermedad',
  dormant: 'dormida',
  thinned: 'aclareo',
  height: 'altura',
  note: 'nota',
};
export const rootBalls: Record<RootBallResult, string> = {
  holds: 'Aguanta',
  'not-yet': 'Aún no: se deshace',
  circling: 'Las raíces dan vueltas',
};
export const rootHabits: Record<RootHabit, string> = {
  taproot: 'Las plantas de raíz pivotante',
  fibrous: 'Las plantas de raíz fibrosa',
  rhizome: 'Las plantas con rizomas',
  tuber: 'Las plantas con tubérculos',
  woody: 'Las leñosas',
};
export const outsides: Record<Outside, string> = {
  opening: 'existencias',
  bought: 'compradas',
  started: 'iniciadas',
  found: 'halladas',
  planted: 'plantadas',
  sold: 'vendidas',
  given: 'regaladas',
  lost: 'perdidas',
  unexplained: 'sin explicar',
};
export const entries: Record<EntryKind, string> = {
  opening: 'Existencia inicial',
  receive: 'Recibido',
  start: 'Iniciado',
  count: 'Contado',
  pot: 'Puesto en maceta',
  'pot-up': 'Trasplantado',
  convert: 'Convertido',
  split: 'Separado',
  merge: 'Juntado',
  move: 'Movido',
  lose: 'Perdido',
  're-identify': 'Reidentificado',
  hold: 'Retenido',
  release: 'Liberado',
  pull: 'Apartado',
  plant: 'Plantado',
  return: 'Devuelto',
  sell: 'Vendido',
  give: 'Regalado',
  observe: 'Observado',
  treat: 'Tratado',
  close: 'Cerrado',
  reverse: 'Revertido',
};
export const sourceKinds: Record<string, string> = {
  'seed-collection': 'recolección de semilla',
  'bought-seed': 'semilla comprada',
  'mother-plants': 'plantas madre',
  'in-ground-bed': 'bancal en el suelo',
  'bought-plants': 'plantas compradas',
  unknown: 'desconocida',
};

const UNITS = {
  Y: { one: '1 año', other: '# años' },
  M: { one: '1 mes', other: '# meses' },
  W: { one: '1 semana', other: '# semanas' },
  D: { one: '1 día', other: '# días' },
};
export const span = (iso: string): string =>
  [...iso.matchAll(/(\d+)([YMWD])/g)]
    .map(([, count, unit]) => plural(Number(count), UNITS[unit as keyof typeof UNITS]))
    .join(' ');

export const ruleSince: Record<PotLifeBasis, (since: string) => string> = {
  confined: (since) => `desde que sus raíces se confinaron el ${since}`,
  container: (since) => `desde que entraron en este recipiente el ${since}`,
  'no-winter': () => '',
};
export const rule = {
  limited: (who: string, within: string, since: string, limit: string) =>
    `${who} dejan la maceta en ${within} ${since}: hasta el ${limit}.`,
  noWinter: (who: string, limit: string) =>
    `${who} no pueden pasar aquí el invierno: fuera antes del ${limit}, ese día incluido.`,
  thisLot: 'Las plantas de este lote',
  inContainer: (who: string, container: string) => `${who} en ${container}`,
};
