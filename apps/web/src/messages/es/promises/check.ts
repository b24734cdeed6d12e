import type { check as english } from '../../en/promises/check.ts';
import { days, plural } from '../words.ts';

export const check: typeof english = {
  checking: 'Mirando qué se puede prometer',
  most: (count, on) =>
    plural(count, {
      zero: `No se puede prometer ninguna para el ${days.long(on)}.`,
      one: `Se puede prometer # para el ${days.long(on)}.`,
      other: `Se pueden prometer hasta # para el ${days.long(on)}.`,
    }),
  all: (count, on) =>
    plural(count, {
      one: `Se puede prometer para el ${days.long(on)}.`,
      other: `Se pueden prometer las # para el ${days.long(on)}.`,
    }),
  some: (count, asked, on) =>
    plural(count, {
      zero: `No se puede prometer ninguna de ${asked} para el ${days.long(on)}: faltarían todas.`,
      one: `Se puede prometer # de ${asked} para el ${days.long(on)}; faltarían ${asked - count}.`,
      other: `Se pueden prometer # de ${asked} para el ${days.long(on)}; faltarían ${asked - count}.`,
    }),
  wholeTrays: (cells, below, above) =>
    `Bandejas de ${cells} celdas: anote ${below === null ? above : `${below} o ${above}`}.`,
  from: (list) => `De ${list.map(({ code, units }) => `${code} (${units})`).join(', ')}.`,
  why: 'Qué lo impide',
  whatElse: 'Qué más serviría',
  firstOn: (asked, on) => `Las ${asked} desde el ${days.long(on)}`,
  lastBeforeOn: (asked, on) => `Las ${asked} hasta el ${days.long(on)}`,
  moveTo: (on) => `Mover el día al ${days.long(on)}`,
  never: 'En ningún día posterior alcanzan para todas las plantas que hay o crecen aquí.',
  instead: (units, container) => `${units} en ${container}`,
  accept: 'Aceptar también',
  acceptToo: (plant, container) => `Aceptar también: ${plant} en ${container}`,
};
