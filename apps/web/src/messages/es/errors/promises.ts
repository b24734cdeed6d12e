import type { ErrorSentences } from '../../errors.ts';
import { days } from '../words.ts';

const unfit = {
  'not-accepted': 'otra planta u otro envase',
  held: 'retenido o en cuarentena',
  'provenance-zone': 'de otra zona de semilla',
  'provenance-unknown': 'de zona de semilla desconocida',
  'not-wild-type': 'no es tipo silvestre',
  'wild-type-unknown': 'no se sabe si es tipo silvestre',
  treated: 'tratado',
  'treatment-unknown': 'no se sabe si fue tratado',
  'not-native': 'no consta que sea nativa de allí',
  'not-ready': 'aún no estará listo',
  'past-plant-by': 'habrá pasado su fecha límite',
  'released-by-hand': 'liberado de este renglón',
};

export const promises = {
  'would-shorten': ({ lines }) =>
    `Esto dejaría menos plantas para: ${lines.map((line) => `${line.orderCode} ${line.scientificName}, ${line.shorterBy} menos`).join('; ')}. Envíelo otra vez si es lo que quiere.`,
  'does-not-serve': ({ supply, reasons }) =>
    `${supply} no sirve para este renglón: ${reasons.map((reason) => unfit[reason]).join(', ')}.`,
  'too-many-lines-share': ({ lines, plants }) =>
    `No se guardó. Ahora ${lines} líneas de pedido comparten ${plants} plantas, demasiadas para planearlas a la vez. Indique menos alternativas o termine primero pedidos viejos.`,
  'promises-moved': () =>
    'Aún no se guardó. Todavía se calculan las promesas que comparten estas plantas. Envíelo otra vez en un momento.',
  'nothing-reserved': ({ supply }) => `De ${supply} no hay nada reservado para este renglón.`,
  'pinned-by-others': ({ supply, available }) =>
    available === 0
      ? `Todo ${supply} está atado a otros renglones. Desate algo antes.`
      : `Anote ${available} o menos: el resto de ${supply} está atado a otros renglones.`,
  'more-than-line-needs': ({ open }) =>
    open === 0 ? 'Este renglón ya tiene todas sus plantas.' : `Anote ${open} o menos: el renglón no necesita más.`,
  'loss-is-settled': ({ order, how, on }) =>
    how === 'whole'
      ? `El renglón de ${order} vuelve a tener todas sus plantas desde el ${days.long(on)}. No hay nada que apartar.`
      : `Esta pérdida de ${order} ya se apartó el ${days.long(on)}. Vuelva a leer la página.`,
  'below-what-happened': ({ least, staged, delivered }) =>
    `Anote ${least} o más: ya se sacaron ${staged} y ya se plantaron o entregaron ${delivered}.`,
} satisfies Partial<ErrorSentences>;
