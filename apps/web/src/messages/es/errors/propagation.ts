import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

const METHODS: Record<string, string> = {
  seed: 'semilla',
  cutting: 'esquejes',
  'root-cutting': 'esquejes de raíz',
  division: 'divisiones',
};
const CONTAINERS: Record<string, string> = {
  tray: 'una bandeja de alvéolos',
  pot: 'macetas',
  flat: 'una bandeja abierta',
  none: 'ningún envase',
};
const UNITS: Record<string, string> = { cell: 'alvéolos', tray: 'bandejas', piece: 'trozos', pack: 'paquetes' };
const STAGES: Record<string, string> = {
  scarification: 'el escarificado',
  stratification: 'el frío húmedo',
  sowing: 'la siembra',
  sticking: 'el estaquillado',
  emergence: 'la nascencia',
  rooting: 'el enraizado',
  'pricking-out': 'el repicado',
  'growing-on': 'la crianza',
  hardening: 'el endurecimiento',
  'root-check': 'la revisión del cepellón',
  ready: 'la salida',
};
const PACES: Record<string, string> = { short: 'corta', usual: 'usual', long: 'larga' };
const capital = (sentence: string): string => sentence.replace(/^./, (letter) => letter.toUpperCase());
const unitsOf = (count: number, unit: string): string => {
  const forms = {
    cell: { one: '# alvéolo', other: '# alvéolos' },
    tray: { one: '# bandeja', other: '# bandejas' },
    piece: { one: '# trozo', other: '# trozos' },
    pack: { one: '# paquete', other: '# paquetes' },
  };
  return plural(count, forms[unit as keyof typeof forms] ?? { one: '# unidad', other: '# unidades' });
};
const listed = (words: readonly string[], names: Record<string, string>): string =>
  words.map((word) => names[word] ?? word).join(' o ');

export const propagation = {
  'batch-closed': ({ batch, closedOn }) =>
    `${batch} se cerró el ${days.long(closedOn)}. Deshaga su última anotación para abrirla de nuevo.`,
  'unit-not-for-method': ({ method, fits }) =>
    `Una tanda de ${METHODS[method] ?? method} se cuenta en ${listed(fits, UNITS)}.`,
  'container-not-for-unit': ({ unit, fits }) =>
    `Los ${UNITS[unit] ?? unit} van en ${listed(fits, CONTAINERS)}. Elija uno de estos.`,
  'tray-without-cells': ({ container }) =>
    container === 'none'
      ? 'Elija antes la bandeja.'
      : `No se sabe cuántos alvéolos tiene ${container}. Anote los alvéolos mismos o ponga su número en el envase.`,
  'more-emerged-than-units': ({ standing, unit }) =>
    `Anote ${standing} o menos: hay ${unitsOf(standing, unit)}. ${unit === 'cell' ? 'Cuente alvéolos con plantas, no plantas' : 'Cuente lo que vive'}; si hay más, corrija antes su número.`,
  'first-alive-unknown': ({ startedOn }) =>
    `Diga cuándo brotó o enraizó lo primero, pues desde ese día corre su vida en maceta. Basta un mes o una estación posterior al ${days.long(startedOn)}.`,
  'units-must-leave': ({ unit }) => `Anote cuántos ${UNITS[unit] ?? unit} se vaciaron: 1 o más.`,
  'lot-not-of-batch': ({ lot, batch }) => `${lot} no salió de ${batch} en este envase. Haga un lote nuevo.`,
  'potting-is-over': ({ lot, lastOn }) =>
    `A ${lot} se le podía añadir hasta el ${days.long(lastOn)}. Haga un lote nuevo.`,
  'cautious-over-units': ({ standing, unit }) => `Anote ${standing} o menos: hay ${unitsOf(standing, unit)}.`,
  'usual-over-units': ({ standing, unit }) => `Anote ${standing} o menos: hay ${unitsOf(standing, unit)}.`,
  'usual-below-cautious': ({ cautious }) =>
    `Anote ${cautious} o más: esa es la cifra prudente, y lo usual no es menos.`,
  'protocol-of-other-plant': ({ protocolPlant, plant }) =>
    `Ese protocolo es de ${protocolPlant}. Elija uno de ${plant}, o ninguno.`,
  'protocol-of-other-method': ({ protocolMethod, method }) =>
    `Ese protocolo es de ${METHODS[protocolMethod] ?? protocolMethod}. Elija uno de ${METHODS[method] ?? method}, o ninguno.`,
  'batch-without-protocol': ({ batch }) => `${batch} empezó sin protocolo, así que no tiene etapas.`,
  'stage-not-in-protocol': ({ stages }) =>
    `El protocolo solo tiene estas etapas: ${stages.map((stage) => STAGES[stage] ?? stage).join(', ')}. Elija una de ellas.`,
  'stage-before-earlier': ({ stage, earlier, earlierOn }) =>
    capital(
      `${STAGES[stage] ?? stage} va después de ${STAGES[earlier] ?? earlier}, que empezó el ${days.long(earlierOn)}. Anote ese día o uno posterior.`,
    ),
  'stage-after-later': ({ stage, later, laterOn }) =>
    capital(
      `${STAGES[stage] ?? stage} va antes de ${STAGES[later] ?? later}, que empezó el ${days.long(laterOn)}. Anote ese día o uno anterior.`,
    ),
  'not-packs': ({ batch, unit }) =>
    `${batch} se cuenta en ${UNITS[unit] ?? unit}. Solo de paquetes se puede sacar semilla: elija una tanda en paquetes.`,
  'packs-of-other-plant': ({ batch, plant }) =>
    `Los paquetes de ${batch} son de ${plant}. Elija paquetes de la misma planta.`,
  'packs-of-other-source': ({ batch, source }) =>
    `Los paquetes de ${batch} son del origen ${source}. Elija ese origen, u otros paquetes.`,
  'units-left': ({ left, unit }) =>
    `Aún quedan ${unitsOf(left, unit)}. Diga por qué se dan de baja o deje la tanda abierta.`,
  'batch-already-there': ({ batch, place }) => `Lo elegido de ${batch} ya está en ${place}. Elija otro lugar.`,
  'nothing-left': ({ batch }) => `No queda nada de ${batch} para pasar a maceta.`,
  'protocol-exists': ({ plant, method, label, isRetired }) =>
    `${plant} ya tiene un protocolo de ${METHODS[method] ?? method}${label ? ` llamado «${label}»` : ''}. ${isRetired ? 'Está retirado: recupérelo, o dé nombre al tratamiento que prueba este.' : 'Revise ese, o dé nombre al tratamiento que prueba este.'}`,
  'protocol-retired': ({ plant, method }) =>
    `El protocolo de ${plant} por ${METHODS[method] ?? method} está retirado. Recupérelo antes.`,
  'protocol-moved-on': ({ number, madeOn }) =>
    `La versión ${number} se escribió el ${days.long(madeOn)}, después de que usted abriera esta. No se guardó nada: abra la versión más nueva y haga allí su cambio.`,
  'protocol-unchanged': ({ number }) => `Dice lo mismo que la versión ${number}. Cambie algo, o déjela como está.`,
  'stage-out-of-order': ({ stage, before }) =>
    capital(`${STAGES[stage] ?? stage} va antes que ${STAGES[before] ?? before}. Súbalo.`),
  'stage-twice': ({ stage }) => capital(`${STAGES[stage] ?? stage} está dos veces. Quite una.`),
  'stage-not-for-method': ({ stage, method }) =>
    capital(`${STAGES[stage] ?? stage} no es una etapa de ${METHODS[method] ?? method}. Quítela.`),
  'duration-out-of-order': ({ than, least }) =>
    plural(least, {
      one: `Anote # día o más: la duración ${PACES[than] ?? than} es de # día.`,
      other: `Anote # días o más: la duración ${PACES[than] ?? than} es de # días.`,
    }),
  'temperature-out-of-order': ({ low }) =>
    `Anote ${low} °C (${Math.round(low * 1.8 + 32)} °F) o más: esa es la mínima.`,
  'seeds-for-seed-only': ({ method }) =>
    `Las semillas son de los protocolos por semilla. Déjelo vacío para ${METHODS[method] ?? method}.`,
  'seeds-need-cells': ({ unit }) =>
    `Solo los alvéolos llevan un número de semillas cada uno. Déjelo vacío para ${UNITS[unit] ?? unit}, o cuente la tanda en alvéolos.`,
} satisfies Partial<ErrorSentences>;
