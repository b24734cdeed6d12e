import type { BatchUnit } from '@rootclock/domain';
import { plural } from '../words.ts';
import { unitNames } from './words.ts';

const sownAs: Record<BatchUnit, string> = { ...unitNames, tray: 'semillas', pack: 'semillas' };

/** Lo que ha brotado o enraizado, por días desde el inicio. */
export const course = {
  title: 'Lo que ha brotado o enraizado',
  empty: 'Aún no se ha contado nada.',
  chart: (counts: number, earlier: number) =>
    `${plural(counts, { one: 'Gráfico de # recuento', other: 'Gráfico de # recuentos' })}${earlier > 0 ? plural(earlier, { one: ' junto a # tanda anterior', other: ' junto a # tandas anteriores' }) : ''}`,
  day: 'Día',
  days: 'Días desde el inicio',
  share: 'De lo sembrado',
  thisBatch: 'esta tanda',
  figures: 'El curso en cifras',
  percentage: 'Brotó',
  percentageOf: (share: string, sown: string, unit: BatchUnit) => `${share} de ${sown} ${sownAs[unit]}`,
  meanTime: 'Tiempo medio',
  half: 'La mitad había brotado a los',
  halves: (coolbear: string, farooq: string) => `${coolbear} (según Coolbear), ${farooq} (según Farooq)`,
  speed: 'Velocidad',
  speedOf: (perDay: string) => `${perDay} al día (Maguire)`,
  daysOf: (count: string) => `${count} días`,
  restsOn: (counts: number) =>
    `${plural(counts, { one: 'Se apoya en # recuento.', other: 'Se apoya en # recuentos.' })} Lo que se ve por primera vez en un recuento cuenta para ese día; los días sin recuento quedan en cero.`,
  noShare: 'No se anotó cuántas semillas se sembraron, así que no hay proporción que comparar con otras tandas.',
  earlier: 'Tandas anteriores de la planta',
  batch: 'Tanda',
  sown: 'Sembrado',
  sownOf: (sown: string, unit: BatchUnit) => `${sown} ${sownAs[unit]}`,
  last: 'En el último recuento',
  lastOf: (share: string, days: number) => plural(days, { one: `${share} tras # día`, other: `${share} tras # días` }),
};
