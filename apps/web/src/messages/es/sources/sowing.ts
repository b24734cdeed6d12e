import type { sowing as en } from '../../en/sources/sowing.ts';
import { plural } from '../words.ts';

export const sowing: typeof en = {
  title: 'Calcular una siembra',
  cells: 'Celdas',
  cellsHint: 'U hoyos, macetas, alvéolos: lo que se siembra por separado.',
  target: 'Que se llenen',
  germination: 'Nacencia esperada',
  germinationHint: 'Lo que nace por sí solo, sin semilla dura ni latente.',
  purity: 'Pureza',
  purityHint: 'En blanco, la semilla se toma como pura.',
  seedsPerGram: 'Semillas por gramo',
  seedsPerGramHint: 'De semilla pura.',
  fromPlant: (standing) => `El dato de la planta (${standing}); mejor contar esta semilla.`,
  perCell: 'Semillas por celda',
  seeds: 'Semillas',
  grams: 'Sacar de lo guardado',
  perCellOf: (count) => plural(count, { one: '# semilla en cada celda', other: '# semillas en cada celda' }),
  ofLeft: (weight) => `Quedan ${weight}.`,
  tooMuch: (left, cells) =>
    `Solo quedan ${left}. Alcanza para ${plural(cells, { one: '# celda', other: '# celdas' })}.`,
  notWeighed: 'Lo guardado no se pesó nunca, así que no se sabe cuánto queda.',
  gramsUnknown: 'Anote las semillas por gramo para ver el peso.',
  looks: 'Cómo quedará la bandeja',
  empty: (count, share) => `${count} vacías (${share})`,
  single: (count, share) => `${count} con una (${share})`,
  multiple: (count, share) => `${count} con varias (${share})`,
  several: 'Varias por celda es normal en juncias, gramíneas y algunas mentas; las demás se aclaran a una.',
  bulk: (share, times) =>
    `La semilla pura viva es el ${share} del peso. Donde se pida un peso de semilla pura viva, saque ${times} veces esa cantidad de lo guardado.`,
  bulkUnknown: 'La semilla pura viva no se sabe sin pureza y sin prueba.',
  enough: 'Anote las celdas, la parte que debe llenarse y la nacencia esperada, y se calcula el resto.',
  never:
    'Ninguna cantidad de semillas llena esa parte de las celdas. Anote menos del 100 % y una nacencia mayor que 0.',
  untested: 'Esta semilla no se probó nunca: la nacencia es un dato suyo.',
  use: 'Usar estos datos',
};
