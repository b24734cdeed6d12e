import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const stock = {
  'not-enough-units': ({ available }) =>
    available === 0
      ? 'Aquí no queda ninguna.'
      : plural(available, { one: 'Anote 1: solo hay #.', other: `Anote ${available} o menos: hay #.` }),
  'spring-count-differs': ({ lots }) =>
    `Lo contado no es lo que hay: ${lots.map(({ lot, place, standing, counted }) => `${lot} en ${place} tiene ${standing}, usted contó ${counted}`).join('; ')}. Corrija los números o anote la diferencia.`,
  'which-place': ({ places }) =>
    `Estas plantas están en varios lugares. Diga cuál: ${places.map((place) => `${place.code} (${place.units})`).join(', ')}.`,
  'lot-held': ({ lot }) => `${lot} está retenido. Libérelo antes o elija otro lote.`,
  'place-closed': ({ place, until }) => `${place} está cerrado hasta ${days.instant(until)}. Nadie debe entrar antes.`,
  'already-reversed': () => 'Esta anotación ya se revirtió.',
  'reversal-is-final': () => 'Una reversión no se puede revertir. Anótelo de nuevo.',
  'units-have-gone': ({ later }) =>
    `Las plantas ya siguieron su camino. Revierta antes lo posterior: ${later.map((entry) => days.long(entry.happenedOn)).join(', ')}.`,
  'cannot-reverse': () => 'Este tipo de anotación no se puede revertir.',
  'may-be-dormant': ({ plant, lastEmergenceMd }) =>
    `${plant} quizá solo duerme${lastEmergenceMd ? `: puede brotar hasta el ${days.yearly(lastEmergenceMd)}` : ''}. Si revisó las raíces y están muertas, envíelo otra vez.`,
  'lots-differ': ({ lots, in: differences }) =>
    `${lots.join(', ')} no pueden llevar la misma etiqueta: difieren en ${differences.map((what) => ({ plant: 'planta', source: 'procedencia', container: 'recipiente' })[what]).join(' y ')}. Elija lotes de una sola planta, procedencia y recipiente.`,
  'nothing-there': ({ of }) => `Ahí no hay nada de ${of}. Elija un lote o un lugar con plantas.`,
  'already-held': ({ lot }) => `${lot} ya está retenido por este motivo.`,
  'not-held': ({ lot }) => `${lot} no está retenido por este motivo.`,
  'already-that-plant': ({ of, plant }) => `${of} ya es ${plant}. Elija la planta que es en realidad.`,
  'stands-in-ground': ({ lot }) => `${lot} está en el suelo. Arránquelo del bancal.`,
  'not-in-ground': ({ lot }) => `${lot} está en macetas y no se puede arrancar. Trasplántelo a otra maceta.`,
  'not-a-nursery-bed': ({ place }) => `${place} no es un bancal del vivero. Elija un bancal en el suelo.`,
  'wrong-container': ({ container, needs }) =>
    needs === 'pot'
      ? `${container} es el suelo. Elija una maceta o bandeja.`
      : `${container} es un recipiente. Elija el suelo.`,
} satisfies Partial<ErrorSentences>;
