import type { ErrorSentences } from '../../errors.ts';
import { grams, percent, plural } from '../words.ts';

export const sources = {
  'source-of-other-plant': ({ source, plant }) =>
    `${source} no es una procedencia de ${plant}. Elija una suya o corrija la planta.`,
  'source-retired': ({ source }) => `${source} está retirada. Recupérela en su página o elija otra.`,
  'source-in-itself': ({ lot }) =>
    `${lot} salió de esta misma procedencia y no puede ser su madre. Elija un lote anterior.`,
  'mother-lot-missing': () => 'Diga qué lote son las plantas madre.',
  'more-seed-than-stored': ({ source, left }) => `Anote ${grams(left)} o menos: de ${source} quedan ${grams(left)}.`,
  'no-seed-stored': ({ source }) =>
    `No hay semilla de ${source} guardada. Guarde o pese semilla en la página de la procedencia, o deje el peso en blanco.`,
  'source-holds-no-seed': ({ source }) =>
    `${source} da esquejes o divisiones, que no se pesan. Elija una procedencia de semilla.`,
  'source-has-seed': ({ source, left }) =>
    `Hay ${grams(left)} de semilla de ${source} guardados. Sáquelos antes o deje un tipo que tenga semilla.`,
  'cleaned-over-raw': ({ raw, cleaned }) =>
    `${grams(cleaned)} de semilla limpia no pueden salir de ${grams(raw)} sin limpiar. Anote ${grams(raw)} o menos.`,
  'blend-of-different-plants': ({ source, plant, wanted }) =>
    `${source} es ${plant} y la mezcla es de ${wanted}. Elija procedencias de una sola planta.`,
  'blend-needs-parts': ({ parts }) =>
    parts === 0
      ? 'Anote el peso de dos partes o más.'
      : 'Anote el peso de al menos una parte más: una mezcla tiene dos o más.',
  'blend-part-twice': ({ source }) => `${source} está dos veces en la mezcla. Anote su peso una sola vez.`,
  'blend-in-use': ({ source, batches }) =>
    `${plural(batches, { one: '# tanda empezó', other: '# tandas empezaron' })} con ${source}. Reviértalas antes.`,
  'replicate-over-seeds': ({ sound, seeds }) => `No puede haber ${sound} de ${seeds} semillas. Anote ${seeds} o menos.`,
  'shares-over-whole': ({ germinated, hard, dormant }) =>
    `${percent(germinated)} sanas, ${percent(hard)} duras y ${percent(dormant)} latentes suman ${percent(germinated + hard + dormant)}. Juntas pueden ser el 100 % como mucho: anote ${percent(Math.max(0, 1 - germinated))} o menos para duras y latentes.`,
  'test-already-withdrawn': () => 'Esta prueba ya se retiró.',
  'seed-of-entry': ({ grams: used }) =>
    `Estos ${grams(used)} los usó una anotación de una tanda. Revierta esa anotación: la semilla vuelve con ella.`,
  'seed-has-gone': ({ source, grams: came, left }) =>
    `De estos ${grams(came)} solo quedan ${grams(left)} guardados de ${source}. Anule antes lo que sacó semilla después.`,
} satisfies Partial<ErrorSentences>;
