import type { day as english } from '../../en/gardens/day.ts';
import { days } from '../words.ts';

export const day: typeof english = {
  title: 'Pasar a otro día',
  newDay: 'Día nuevo',
  now: (on) => `Ahora el ${days.long(on)}.`,
  whatIf: (on) => `Si pasa al ${days.long(on)}:`,
  nothingChanges: 'Cada renglón conserva lo que tiene.',
  others: 'Otros pedidos',
  shorter: (plant, container, now, then, by, of) => `A ${plant} en ${container} le faltarán ${by}: ${now} de ${of} ahora, después ${then}.`,
  fuller: (plant, container, now, then, of) => `${plant} en ${container} gana: ${now} de ${of} ahora, después ${then}.`,
  same: (plant, container, filled, of) => `${plant} en ${container} conserva ${filled} de ${of}.`,
  otherLine: (order, client, sentence) => `${order}, ${client}: ${sentence}`,
  keeps: 'El pedido conserva su turno.',
  goesLast: 'El pedido pasa detrás de todos los demás, para que a nadie más le falten plantas.',
  move: (on) => `Pasar al ${days.long(on)}`,
  moved: (on) => `Pasado al ${days.long(on)}.`,
};
