import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const stock = {
  'not-enough-units': ({ available }) => (available === 0 ? 'Aquí no queda ninguna.' : plural(available, { one: 'Anote 1: solo hay #.', other: `Anote ${available} o menos: hay #.` })),
  'which-place': ({ places }) => `Estas plantas están en varios lugares. Diga cuál: ${places.map((place) => `${place.code} (${place.units})`).join(', ')}.`,
  'lot-held': ({ lot }) => `${lot} está retenido. Libérelo antes o elija otro lote.`,
  'place-closed': ({ place, until }) => `${place} está cerrado hasta ${until}. Nadie debe entrar antes.`,
  'already-reversed': () => 'Esta anotación ya se revirtió.',
  'reversal-is-final': () => 'Una reversión no se puede revertir. Anótelo de nuevo.',
  'units-have-gone': ({ later }) => `Las plantas ya siguieron su camino. Revierta antes lo posterior: ${later.map((entry) => days.long(entry.happenedOn)).join(', ')}.`,
  'cannot-reverse': () => 'Este tipo de anotación no se puede revertir.',
  'may-be-dormant': ({ plant, lastEmergenceMd }) =>
    `${plant} quizá solo duerme${lastEmergenceMd ? `: puede brotar hasta el ${days.yearly(lastEmergenceMd)}` : ''}. Si revisó las raíces y están muertas, envíelo otra vez.`,
} satisfies Partial<ErrorSentences>;
