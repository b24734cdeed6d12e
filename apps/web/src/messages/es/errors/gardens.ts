import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const gardens = {
  'order-not-open': ({ order, state }) =>
    state === 'done'
      ? `${order} está terminado. Ya no se puede cambiar nada.`
      : `${order} fue cancelado. Ya no se puede cambiar nada.`,
  'line-withdrawn': ({ plant }) => `El renglón de ${plant} fue retirado. Agregue un renglón nuevo.`,
  'site-needed': () => 'Elija el sitio: para plantar hay que saber adónde van las plantas.',
  'site-of-other-client': ({ site }) => `${site} es de otro cliente. Elija un sitio de este.`,
  'bed-of-other-site': ({ bed }) => `${bed} está en otro sitio. Elija una jardinera de este.`,
  'alternative-twice': ({ plant }) => `${plant} en este envase está dos veces. Anótelo una sola vez.`,
  'whole-trays-only': ({ cells, below, above }) =>
    `Bandejas de ${cells} celdas: anote ${below === null ? above : `${below} o ${above}`}.`,
  'other-trays': ({ container, cells, asked }) =>
    `${container} ${cells === null ? 'no es una bandeja de celdas' : `tiene ${cells} celdas`}, y este renglón ${asked === null ? 'pide plantas sueltas' : `pide bandejas de ${asked}`}. Agregue un renglón aparte.`,
  'kit-name-taken': ({ name }) => `Otro juego se llama ${name}. Elija otro nombre.`,
  'kit-retired': ({ kit }) => `El juego ${kit} ya no se ofrece. Elija otro.`,
  'component-twice': ({ plant }) =>
    `${plant} en este envase está dos veces en el juego. Anótelo una vez, con todas sus plantas.`,
  'kit-changed': ({ kit }) => `El juego ${kit} cambió entretanto. Mírelo y agréguelo de nuevo.`,
  'not-of-kit': ({ kit, units }) =>
    units === null
      ? `El juego ${kit} ya no lleva esta planta en este envase. Quite el renglón y agregue el juego de nuevo.`
      : `El juego ${kit} lleva ahora ${units}. Quite el renglón y agregue el juego de nuevo.`,
  'not-native-here': ({ plant, region }) =>
    `No consta que ${plant} sea nativa de ${region}, y este pedido solo acepta nativas. Elija otra planta o deje que el pedido acepte otras.`,
  'natives-need-region': ({ site }) =>
    site === null
      ? 'Elija un sitio: solo su región dice qué es nativo.'
      : `${site} aún no tiene región. Anótela en la página del sitio; después se pueden pedir solo nativas.`,
  'below-what-happened': ({ least, staged, delivered }) =>
    `Anote ${least} o más: ya se sacaron ${staged} y ya se plantaron o entregaron ${delivered}.`,
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
  'wrong-order-kind': ({ order, kind }) =>
    kind === 'installation'
      ? `${order} es una instalación: sus plantas se plantan, no se entregan.`
      : `${order} no es una instalación: sus plantas se entregan, no se plantan.`,
  'client-blanked': () => 'Los datos de este cliente se borraron a petición. Agregue un cliente nuevo.',
  'orders-are-open': ({ orders }) =>
    `${orders.join(', ')} ${orders.length === 1 ? 'sigue abierto' : 'siguen abiertos'}. Termine o cancele antes.`,
} satisfies Partial<ErrorSentences>;
