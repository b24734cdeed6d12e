import type { line as english } from '../../en/promises/line.ts';
import { days, plural } from '../words.ts';

const listed = (codes: readonly string[]): string => (codes.length === 0 ? '' : ` (${codes.join(', ')})`);
const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });
const are = (count: number, one: string, other: string): string =>
  plural(count, { one: `# ${one}`, other: `# ${other}` });

export const line: typeof english = {
  title: 'Renglón',
  also: 'o en su lugar:',
  tied: 'atadas',
  tiedHint: 'Las plantas atadas se quedan con este renglón. Las demás pueden pasar a otro lote cuando eso sirva mejor.',
  batch: 'aún sin maceta',
  tie: 'Atar a este renglón',
  untie: 'Desatar',
  release: 'Soltar',
  actionsOf: (code) => `Más para ${code}`,
  tiedToast: (units, code) =>
    plural(units, {
      one: `# planta de ${code} queda atada al renglón.`,
      other: `# plantas de ${code} quedan atadas al renglón.`,
    }),
  untiedToast: (code) => `${code} puede cambiar de nuevo.`,
  releasedToast: (code) => `${code} se soltó de este renglón.`,
  tieAgain: 'Atar de nuevo',

  undelivered: (count) => plural(count, { one: '# no se entregó', other: '# no se entregaron' }),
  isShort: (count) => plural(count, { one: 'falta # planta', other: 'faltan # plantas' }),
  reasons: {
    'not-grown': () => 'De esta planta en este envase no hay nada ni está creciendo nada.',
    'no-whole-tray': ({ units, codes }) => `${are(units, 'no llena', 'no llenan')} una bandeja entera${listed(codes)}.`,
    promised: ({ units, codes }) => `${are(units, 'está prometida', 'están prometidas')} a otros${listed(codes)}.`,
    held: ({ units, codes }) => `${are(units, 'está retenida', 'están retenidas')} o en cuarentena${listed(codes)}.`,
    'provenance-zone': ({ units, codes }) => `${are(units, 'es', 'son')} de otra zona de semilla${listed(codes)}.`,
    'provenance-unknown': ({ units, codes }) =>
      `${are(units, 'es', 'son')} de zona de semilla desconocida${listed(codes)}.`,
    'not-wild-type': ({ units, codes }) => `${are(units, 'no es', 'no son')} de tipo silvestre${listed(codes)}.`,
    'wild-type-unknown': ({ units, codes }) => `de ${plants(units)} no se sabe si es tipo silvestre${listed(codes)}.`,
    treated: ({ units, codes }) => `${are(units, 'fue tratada', 'fueron tratadas')}${listed(codes)}.`,
    'treatment-unknown': ({ units, codes }) => `de ${plants(units)} no se sabe si hubo tratamiento${listed(codes)}.`,
    'not-native': ({ units, codes }) =>
      `de ${plants(units)} no consta que sean nativas de la región del sitio${listed(codes)}.`,
    'not-ready': ({ units, codes, day }) =>
      `${are(units, 'no estará lista', 'no estarán listas')} para entonces${listed(codes)}${day ? `; las primeras el ${days.long(day)}` : ''}.`,
    'past-plant-by': ({ units, codes, day }) =>
      `${are(units, 'habrá pasado', 'habrán pasado')} su fecha límite${listed(codes)}${day ? `; su último día es el ${days.long(day)}` : ''}.`,
    'released-by-hand': ({ units, codes }) =>
      `${are(units, 'se soltó', 'se soltaron')} a mano de este renglón${listed(codes)}.`,
  },

  natives: {
    title: 'No cumple «solo nativas»',
    breaks: (region) =>
      `No consta que sea nativa de ${region}, así que aquí no se reserva nada de ella. Retire el renglón, quite la alternativa o deje que el pedido acepte otras.`,
    noRegion:
      'El sitio no tiene región, así que nada puede llamarse nativo y no se reserva nada. Anote la región en la página del sitio.',
  },

  alternatives: 'Acepta en su lugar',
  addAlternative: 'Otra opción',
  removeAlternative: (number) => `Quitar la opción ${number + 1}`,
  penaltyOf: (number) => `Penalización de la opción ${number}`,
  penaltyHint: 'La menor va primero. Vacía, va detrás de las anteriores.',
  penaltyIs: (penalty) => `penalización ${penalty}`,
  alternativesHint: 'Lo que el cliente acepta cuando esta no se consigue, la penalización menor primero.',
  wildType: 'Solo tipo silvestre',
  untreated: 'Solo plantas sin tratar',
  untreatedHint: 'Los lotes de los que nadie lo sabe también quedan fuera.',
  seedZone: 'Zona de semilla',
  seedZoneIs: (zone) => `Zona de semilla ${zone}`,
  seedZoneHint: 'Como la nombran las fuentes. Los lotes de otra parte, o de quién sabe dónde, quedan fuera.',
  conditions: 'Condiciones',

  add: 'Agregar un renglón',
  addTitle: 'Renglón nuevo',
  editTitle: 'Cambiar el renglón',
  saved: 'El renglón está guardado.',
  added: (plant, units) => `Se agregaron ${plants(units)} de ${plant}.`,
  withdraw: 'Retirar el renglón',
  withdrawTitle: '¿Retirar este renglón?',
  withdrawText:
    'Sus plantas quedan libres para otros. Un renglón retirado sigue a la vista y no se puede retomar; agregue uno nuevo.',
  withdrawn: (plant) => `El renglón de ${plant} está retirado.`,
  withdrawnOn: (on) => `retirado el ${days.long(on)}`,
  moreActions: (plant) => `Más para el renglón de ${plant}`,

  choose: 'Elegir lotes',
  chooseTitle: 'Lotes que podrían servir',
  chooseLead: 'Primero está lo que antes debe salir de su maceta.',
  free: (count) => plural(count, { zero: 'ninguna libre', one: '# libre', other: '# libres' }),
  onHand: (count) => plural(count, { one: 'hay #', other: 'hay #' }),
  tieUnits: (code) => `Plantas de ${code}`,
  noOffers: 'Ningún lote podría servir este renglón',
  cannotServe: 'Qué no puede servir y por qué',
  givenUp: 'soltado a mano',

  wouldShorten: 'A otros les faltarían plantas',
  shorter: (order, client, plant, container, before, after, by) =>
    `${order}, ${client}: ${plant} en ${container} tiene ${before} ahora, después ${after}: ${by} menos.`,
  accept: 'Hacerlo de todos modos',
  keepRank: 'Conservar el turno de este pedido',
  keepRankHint: 'Si no, pasa detrás de todos los demás donde eso los salve.',
};
