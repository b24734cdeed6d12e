import type { IssueSentences } from '../errors.ts';
import { plural } from './words.ts';

export const issues: IssueSentences = {
  required: () => 'Esto hace falta.',
  'not-a-number': () => 'Anote un número en cifras, como 12.',
  'not-whole': () => 'Anote un número entero, sin fracción.',
  'too-small': ({ least = 0 }) => `Anote ${least} o más.`,
  'too-big': ({ most = 0 }) => `Anote ${most} o menos.`,
  'too-long': ({ most = 0 }) =>
    plural(most, { one: 'Use como máximo # carácter.', other: 'Use como máximo # caracteres.' }),
  'too-short': ({ least = 0 }) =>
    plural(least, { one: 'Use al menos # carácter.', other: 'Use al menos # caracteres.' }),
  'not-a-date': () => 'Anote un día que exista.',
  'far-year': ({ least = 0, most = 0 }) => `Elija un año de ${least} a ${most}.`,
  'broken-text': () => 'Hay un carácter que no se puede guardar. Borre el texto y escríbalo otra vez.',
  'too-many-alternatives': ({ most = 0 }) =>
    `Un pedido puede nombrar ${most} alternativas a la vez. Indique menos o agregue líneas después.`,
  'not-a-share': () => 'Anote una parte del 0 al 100 %.',
  'not-a-purity': () => 'Anote una pureza del 0.1 al 100 %.',
  'not-a-choice': () => 'Elija uno de la lista.',
  'wrong-form': () => 'Esto no está escrito como debe ser.',
  'unknown-field': () => 'El servidor no conoce este campo. Recargue la página.',
};
