import type { ErrorSentences } from '../../errors.ts';

export const files = {
  'file-too-large': ({ mostMegabytes }) => `El archivo es demasiado grande. Elija uno de ${mostMegabytes} MB o menos.`,
  'picture-broken': () => 'No se puede leer esta foto. Puede estar dañada. Tómela de nuevo o elija otra.',
  'picture-too-wide': ({ megapixels, mostMegapixels }) =>
    `La foto tiene ${megapixels} megapíxeles. Elija una de ${mostMegapixels} o menos.`,
  'picture-is-heic': () =>
    'Aquí no se abren fotos HEIC. Ponga la cámara en JPEG, o guarde una copia en JPEG y agréguela.',
  'not-a-picture': () => 'Esto no es una foto. Elija un archivo JPEG, PNG o WebP.',
  'not-a-pdf': () => 'Esto no es un PDF completo. Guárdelo otra vez y vuelva a elegirlo.',
  'file-blanked': () => 'La foto se borró con los datos del cliente. Ya no se puede recuperar.',
} satisfies Partial<ErrorSentences>;
