import type { ErrorSentences } from '../../errors.ts';

export const orders = {
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
  'wrong-order-kind': ({ order, kind }) =>
    kind === 'installation'
      ? `${order} es una instalación: sus plantas se plantan, no se entregan.`
      : `${order} no es una instalación: sus plantas se entregan, no se plantan.`,
} satisfies Partial<ErrorSentences>;
