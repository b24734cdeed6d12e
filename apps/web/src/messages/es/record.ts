import type { BatchUnit, PotLifeBasis } from '@rootclock/domain';
import type { Messages } from '../en/index.ts';
import { plural } from './words.ts';

const batches = (count: number): string => plural(count, { one: '# siembra', other: '# siembras' });
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
const days = (count: number): string => plural(count, { one: '# día', other: '# días' });
const tried = (passed: string, of: string, what: 'seeds' | BatchUnit | 'plants'): string => {
  const names = {
    seeds: 'semillas',
    cell: 'celdas',
    piece: 'piezas',
    tray: 'semillas',
    pack: 'semillas',
    plants: 'plantas',
  };
  return `${passed} de ${of} ${names[what]}`;
};

export const record: Messages['record'] = {
  title: 'Registro',
  lead: 'Lo que pasó cada etapa en este vivero, junto a lo que dice el protocolo, y en cuántas se apoya.',
  search: 'Planta',
  show: 'Mostrar',
  showAll: 'También protocolos',
  showCounted: 'Lo contado',
  caption: 'Proporciones que pasan, por planta y método',
  plant: 'Planta',
  method: 'Método',
  cameUp: 'Brotó o enraizó',
  prickedOut: 'Repicado',
  grownOn: 'Cultivado',
  inAll: 'En total',
  usual: 'protocolo usual',
  noProtocol: 'sin protocolo de este nombre',
  counts: (passed, of, what, inBatches) => `${tried(passed, of, what)} en ${batches(inBatches)}`,
  interval: (low, high) => `solo conteos: ${low} a ${high}`,
  prior: (share) => `protocolo ${share}`,
  priorAlone: 'aún sin siembra terminada: solo la cifra del protocolo',
  notInProtocol: 'su protocolo no tiene esta etapa',
  notCounted: 'sin contar',
  open: (plant) => `${plant}: todo lo aprendido`,
  emptyTitle: 'Todavía no hay de qué aprender',
  emptyText: 'Escriba un protocolo o termine una siembra: desde entonces sus conteos están aquí.',
  noneTitle: 'Ninguna planta coincide',
  noneText: 'Busque una parte del nombre o muestre todas.',
  inAllHint: (low, high) => `lo más probable, ${low} a ${high}`,
  bar: (share, low, high, prior) => `Se cree ${share}; solo conteos ${low} a ${high}; protocolo ${prior}`,
  barAlone: (prior) => `Protocolo ${prior}, nada contado`,
  barCounts: (share, low, high) => `Contado ${share}, ${low} a ${high}`,

  weigh: 'Cómo pesan los conteos',
  weighLead:
    'La cifra de un protocolo cuenta como tantas plantas; lo contado se le suma. Con más conteos habla más alto el registro propio.',
  priorWeight: 'La cifra de un protocolo cuenta como',
  priorWeightHint: 'Plantas. Con un número pequeño, pocas siembras cambian pronto la cifra.',
  evidenceLimit: 'Los conteos pesan a lo más como',
  evidenceLimitHint:
    'Plantas. Las siembras difieren más de lo que dicen sus conteos, así que ninguna proporción es más segura que esto.',
  planConfidence: 'Cuán seguros deben ser los planes',
  planConfidenceHint: 'Por ciento, de 50 a 99,9. Un plan más seguro inicia más.',
  winterSurvival: 'Sobreviven el invierno antes de contar',
  winterSurvivalHint: 'Por ciento de las plantas en maceta.',
  plantsUnit: 'plantas',
  percent: '%',
  preview: 'Lo que esto cambia',
  previewNone: 'Ninguna proporción cambia medio punto o más.',
  previewShares: (count) =>
    plural(count, { one: '# proporción cambia medio punto o más', other: '# proporciones cambian medio punto o más' }),
  previewLine: (what, before, after) => `${what}: ${before} → ${after}`,
  previewStart: (plant, before, after) => `Para tener 50 de ${plant}: iniciar ${before} → ${after}`,
  cannot: 'ningún número alcanza',
  save: 'Guardar',
  saved: 'Los conteos pesan de otra manera. Lo que las siembras pueden prometer queda como está anotado.',
  ownerOnly: 'Un dueño del vivero puede cambiarlo.',
  weights: (weight, limit, confidence) =>
    `La cifra de un protocolo cuenta como ${weight} plantas, los conteos como ${limit} a lo más; los planes son seguros al ${confidence}.`,

  shares: 'Lo que pasa',
  sharesOf: (method, label) => (label ? `${capital(method)}: ${label}` : capital(method)),
  legend:
    'Relleno: lo que se cree. Línea con topes: lo que permiten los conteos solos, 95 de cada cien veces. Raya: el protocolo.',
  stage: 'Etapa',
  believed: 'Se cree',
  countsColumn: 'Contado',
  protocolColumn: 'Protocolo',
  range: (low, high) => `${low} a ${high}`,
  over: (count) =>
    `Se pusieron en maceta ${plural(count, { one: '# planta más de las que brotaron; no cuenta', other: '# plantas más de las que brotaron; no cuentan' })}.`,
  covers: (stages) => `con ${stages}`,
  toProtocol: 'El protocolo',
  timeOf: (method, what) => `${capital(method)}: ${what}`,
  hereTitle: 'Nada aprendido todavía',
  hereText: 'No hay protocolo ni siembra terminada de esta planta.',

  times: 'Cuánto tarda',
  timesLead:
    'Desde el inicio de una siembra. Las que están en marcha cuentan el tiempo que se las ha visto; una de la que nada llegó a maceta queda fuera.',
  timesChart: (rows) =>
    plural(rows, {
      one: 'Gráfica de # tiempo: línea del percentil diez al noventa, marca en la mediana',
      other: 'Gráfica de # tiempos: líneas del percentil diez al noventa, marcas en las medianas',
    }),
  toPotting: 'hasta la primera maceta',
  toReady: 'hasta el primer cepellón firme',
  what: 'Qué',
  tenth: 'Un décimo a los',
  median: 'La mitad a los',
  ninetieth: 'Nueve décimos a los',
  restsOn: 'Se apoya en',
  rests: (count, unfinished) => `${batches(count)}${unfinished > 0 ? `, ${unfinished} en marcha` : ''}`,
  notYet: 'aún no',
  days,
  noTimes: 'Todavía no se inició ninguna siembra de esta planta.',
  daysFromStart: 'Días desde el inicio',

  losses: 'Pérdidas en maceta por estación',
  lossesLead:
    'Plantas perdidas o que faltaron en un conteo, por los días que estuvieron; lo desechado no es pérdida y las apartadas para pedidos cuentan como presentes. Lo que se llevó el invierno cuenta al invierno, aunque se vea en primavera.',
  season: 'Estación',
  seasons: { spring: 'Primavera', summer: 'Verano', autumn: 'Otoño', winter: 'Invierno' },
  lost: 'Perdidas',
  plantDays: 'Días-planta',
  per: 'Perdidas de 1.000 en un mes',
  noExposure: 'no hubo nada',
  winterLine: (share) => `De las plantas en maceta se espera que ${share} sobrevivan un invierno.`,
  winterRests: (lived, stood, lots) =>
    `${lived} de ${stood} plantas en ${plural(lots, { one: '# lote', other: '# lotes' })} vivieron, según los conteos de primavera.`,
  winterAlone: 'Aún sin conteo de primavera: solo la cifra propia del vivero.',

  survival: 'Vida en la maceta',
  survivalLead:
    'La proporción que vive, por días en la maceta. Las vendidas, plantadas, trasplantadas, desechadas o presentes cuentan el tiempo que se las vio vivas; lo que faltó en un conteo no se da por muerto.',
  survivalIn: (container) => `En ${container}`,
  survivalChart: (container, plants, died) => `Curva de supervivencia en ${container}: murieron ${died} de ${plants}`,
  survivalRests: (plants, died, last) =>
    `Se apoya en ${plants} plantas, de las que murieron ${died}; las últimas se vieron a los ${days(last)}.`,
  medianDays: (count) => `La mitad había muerto a los ${days(count)}.`,
  noMedian: 'Más de la mitad vivía mientras se las observó.',
  noDeaths: 'Ninguna murió mientras se las observó.',
  limit: (span, basis, count) =>
    `Límite ${span} ${({ confined: 'desde que las raíces están confinadas', container: 'en el recipiente', 'no-winter': 'antes del invierno' } satisfies Record<PotLifeBasis, string>)[basis]}: día ${count}`,
  limitAt: (share) => `${share} vivían al llegar al límite.`,
  limitBeyond: 'Nadie observó plantas tanto tiempo todavía.',
  limitMark: 'Límite',
  noSurvival: 'Ninguna planta de estas estuvo en una maceta con día anotado.',
  daysInPot: 'Días en la maceta',
  day: 'Día',
  atRisk: 'Observadas',
  died: 'Murieron',
  alive: 'Vivas',
  band: 'Entre',
  allSteps: (count) => plural(count, { one: '# día con muertes', other: '# días con muertes' }),
};
