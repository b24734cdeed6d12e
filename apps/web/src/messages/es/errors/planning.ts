import { days } from '../words.ts';
import type { ErrorSentences } from '../../errors.ts';

export const planning = {
  'task-ends-by-entry': ({ of }) =>
    `Esto no se marca: queda hecho cuando se anota en ${of}. Ábralo y anote lo que se hizo.`,
  'wanted-day-past': ({ today }) =>
    `Elija una temporada que no haya terminado, o un día a partir del ${days.long(today)}.`,
  'demand-withdrawn': () => 'Esto se retiró antes. Anótelo de nuevo si hace falta.',
  'plan-takes-too-long': ({ seconds }) =>
    `El plan no estuvo listo en ${seconds} segundos. No se perdió nada: pídalo otra vez en un momento.`,
} satisfies Partial<ErrorSentences>;
