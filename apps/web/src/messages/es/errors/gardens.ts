import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const gardens = {
  'plants-are-staged': ({ order, units }) =>
    plural(units, {
      one: `# planta sigue apartada para ${order}. Plántela, devuélvala o diga adónde va.`,
      other: `# plantas siguen apartadas para ${order}. Plántelas, devuélvalas o diga adónde van.`,
    }),
  'root-ball-not-checked': ({ lots }) =>
    `Nadie ha revisado el cepellón de ${lots.join(', ')}. Mire uno antes; si aguanta, envíe esto otra vez.`,
  'not-enough-staged': ({ staged, of }) =>
    staged === 0
      ? `De ${of} no hay ninguna sacada para este renglón.`
      : `Anote ${staged} o menos: de ${of} hay ${staged} sacadas para este renglón.`,
  'not-accepted': ({ lot, accepted }) =>
    `Este renglón no acepta ${lot}. Acepta ${accepted.join(', ')}. Agregue antes la planta como alternativa.`,
  'no-quarantine-place': () => 'No hay ningún lugar de cuarentena. Elija adónde van las plantas.',
  'cause-needed': () => 'Diga por qué se perdieron estas plantas.',
  'orders-are-open': ({ orders }) =>
    `${orders.join(', ')} ${orders.length === 1 ? 'sigue abierto' : 'siguen abiertos'}. Termine o cancele antes.`,
} satisfies Partial<ErrorSentences>;
