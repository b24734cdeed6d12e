import type { ErrorSentences } from '../../errors.ts';

export const sources = {
  'source-of-other-plant': ({ source, plant }) => `${source} no es una procedencia de ${plant}. Elija una suya o corrija la planta.`,
  'source-retired': ({ source }) => `${source} está retirada. Recupérela en su página o elija otra.`,
  'source-in-itself': ({ lot }) => `${lot} salió de esta misma procedencia y no puede ser su madre. Elija un lote anterior.`,
  'mother-lot-missing': () => 'Diga qué lote son las plantas madre.',
} satisfies Partial<ErrorSentences>;
