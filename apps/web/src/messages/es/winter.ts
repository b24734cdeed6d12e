import type { Messages } from '../en/index.ts';
import { plural } from './words.ts';

const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });

export const winter: Messages['winter'] = {
  count: 'Conteo de primavera',
  title: (what) => `Conteo de primavera: ${what}`,
  lead: 'Brotadas, muertas y sin brotar suman lo que hay ahí. Deje vacío el lote que no contó.',
  stands: (count, pot) => `${plants(count)} · ${pot}`,
  up: 'Brotadas',
  dead: 'Muertas',
  notUp: 'Sin brotar',
  restUp: 'Las demás brotaron',
  left: (left) => (left > 0 ? `Faltan ${plants(left)} por distinguir` : `${plants(-left)} más de las que hay`),
  sums: 'Cuadra',
  last: (on, up, dead, notUp) => `Contado ${on}: ${up} brotadas, ${dead} muertas, ${notUp} sin brotar`,
  field: (what, code, place) => `${what}: ${code} en ${place}`,
  save: 'Guardar el conteo',
  saved: (up, dead, notUp) => `${up} brotadas, ${dead} muertas, ${notUp} sin brotar.`,
  differs: 'Los números no suman lo que hay',
  differsLine: (lot, place, standing, counted) => `${lot} en ${place}: hay ${standing}, usted contó ${counted}`,
  book: 'Anotar la diferencia',
  bookHint: 'Las que faltan se anotan sin explicación, las de más como halladas.',
  nothing: 'Aquí no hay nada que contar.',
  notUpTitle: 'Sin brotar',
  notUpLine: (count, standing) => `${count} de ${standing}`,
  waits: (until) => `pueden brotar hasta el ${until}`,
  asks: (until) =>
    `debían brotar antes del ${until}: délas por perdidas, o cuéntelas otra vez sin brotar para guardarlas un año más`,
  answer: 'Contar otra vez',
  dues: 'Invierno',
  duesLead: 'Días de cada año en que aquí toca hacer algo. Aparecen entre las tareas.',
  cover: 'Cubrir',
  bait: 'Poner cebo para topillos',
  uncover: 'Destapar',
  baitHint:
    'Los cebos son plaguicidas: la etiqueta es la ley y las normas locales pueden exigir licencia. Lejos de mascotas y fauna.',
  benchArea: 'Superficie de mesas',
  benchAreaHint: 'Donde pueden estar plantas. El plan de lo que hay que iniciar cuenta con ella.',
  squareMetres: 'm²',
  living: 'Se espera que vivan',
  livingLead: 'Lo que probablemente viva en un día, según lo que este vivero perdió de la planta hasta ahora.',
  byPlantBy: (on) => `Para el día límite de plantar, ${on}`,
  chosenDay: 'En otro día',
  about: (living, of) => `unas ${living} de ${of}`,
  winterShare: (share) => `${share} sobreviven un invierno`,
  rate: (perHundred) => `de cien se pierden ${perHundred} en un mes de crecimiento`,
  restsOn: (losses, plantDays) =>
    `Se apoya en ${plural(losses, { one: '# pérdida', other: '# pérdidas' })} en ${plantDays} días-planta`,
  restsOnWinter: (lived, count, lots) =>
    `${lived} de ${count} plantas en ${plural(lots, { one: '# lote', other: '# lotes' })} sobrevivieron el invierno`,
  noWinter: 'Aún sin conteo de primavera: solo la cifra propia del vivero',
  noDays: 'Hasta ahora nada estuvo en macetas: solo una tasa supuesta',
};
