import type { day as english } from '../../en/promises/day.ts';
import { days } from '../words.ts';

export const day: typeof english = {
  title: 'Pasar a otro día',
  newDay: 'Día nuevo',
  now: (on) => `Ahora el ${days.long(on)}.`,
  keeps: 'El pedido conserva su turno.',
  goesLast: 'El pedido pasa detrás de todos los demás, para que a nadie más le falten plantas.',
  move: (on) => `Pasar al ${days.long(on)}`,
  moved: (on) => `Pasado al ${days.long(on)}.`,
};
