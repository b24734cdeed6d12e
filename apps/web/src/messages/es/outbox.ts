import type { outbox as en } from '../en/outbox.ts';
import { plural } from './words.ts';

export const outbox: typeof en = {
  title: 'Bandeja de salida',
  lead: 'Cada anotación queda en este aparato hasta que el servidor responda.',
  noAnswer: 'El servidor no responde. Revise la conexión e intente de nuevo.',
  fault: (requestId) =>
    `El servidor tropezó y no pudo hacer esto.${requestId ? ` Si pasa otra vez, dé este número a quien cuida el servidor: ${requestId}.` : ''}`,
  looking: 'Revisando lo pendiente',
  allSent: 'Todo está enviado',
  allSentText: 'El servidor respondió a todas las anotaciones hechas en este aparato.',
  waiting: (count) => plural(count, { one: '# anotación espera su envío', other: '# anotaciones esperan su envío' }),
  attention: (count) => plural(count, { one: '# anotación pide atención', other: '# anotaciones piden atención' }),
  waitingTitle: 'En espera de envío',
  attentionTitle: 'Pide atención',
  offline: 'Sin conexión',
  sending: 'Enviando',
  enteredAt: 'Anotado',
  tries: (count) => plural(count, { zero: 'sin intentos aún', one: 'un intento', other: '# intentos' }),
  refusedBecause: 'El servidor la rechazó',
  dependsOnOther: 'Necesita una anotación que el servidor rechazó. Sale sola cuando esa se corrija.',
  typed: 'Lo anotado',
  sendAgain: 'Enviar de nuevo',
  mending:
    'El servidor rechazó esta anotación. Corríjala y envíela de nuevo; toma el lugar de la que está en la bandeja.',
  clash: {
    title: (by: string | null) => `${by ?? 'Otra persona'} cambió esto mientras usted escribía.`,
    savedAt: (when: string) => `Se guardó el ${when}. Lo suyo todavía no se guardó.`,
    nothingSaved: 'Lo suyo todavía no se guardó.',
    yours: 'Lo suyo',
    theirs: 'Lo otro',
    keepMine: 'Dejar lo mío',
    takeTheirs: 'Tomar lo otro',
    nothing: 'Vacío',
    yes: 'Sí',
    no: 'No',
  },
  mend: 'Corregir',
  discard: 'Desechar',
  discardTitle: '¿Desechar esta anotación?',
  discardText: 'Lo anotado desaparece de este aparato, y el servidor nunca lo tuvo. No se puede deshacer.',
  discardConfirm: 'Desechar la anotación',
  parkedToast: 'Una anotación fue rechazada y queda en la bandeja de salida.',
  show: 'Ver',
  signInAgain: 'Entre de nuevo para enviar lo que espera aquí.',
  somebodyElse: (count) =>
    plural(count, {
      one: '# anotación de otra persona espera a que entre.',
      other: '# anotaciones de otras personas esperan a que entren.',
    }),
  notLasting: 'Este navegador no guarda nada al cerrarse: deje esta página abierta hasta que todo esté enviado.',
};
