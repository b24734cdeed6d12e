import type { planting as english } from '../../en/gardens/planting.ts';
import { plural } from '../words.ts';

export const planting: typeof english = {
  tabs: 'Qué pasa con las plantas sacadas',
  plantTab: 'Plantar',
  handOverTab: 'Entregar',
  returnTab: 'Devolver',
  title: (code) => `Plantar ${code}`,
  titleHandOver: (code) => `Entregar ${code}`,
  nothingStaged: 'No hay nada sacado',
  nothingStagedText: 'Saque antes plantas para este pedido. Lo que se plantó sin sacarse se puede anotar abajo.',
  nothingStagedHandOver: 'Saque antes plantas para este pedido.',

  plantedOn: 'Plantadas el',
  handedOverOn: 'Entregadas el',
  returnedOn: 'Devueltas el',
  ofPulled: (units) => `de ${units} sacadas`,
  unitsPlanted: 'Plantadas',
  unitsGiven: 'Entregadas',
  all: 'Todas',
  none: 'Ninguna',
  forBed: (bed) => `para ${bed}`,
  plantUnits: (count) => `Plantar ${count}`,
  handOverUnits: (count) => `Entregar ${count}`,
  nothingChosen: 'Diga antes cuántas.',
  planted: (count, code) =>
    plural(count, { one: `# planta plantada para ${code}.`, other: `# plantas plantadas para ${code}.` }),
  handedOver: (count, code) =>
    plural(count, { one: `# planta entregada para ${code}.`, other: `# plantas entregadas para ${code}.` }),

  extraTitle: 'Más de lo sacado',
  extraLead:
    'Plantas que se plantaron sin haberse sacado: tomadas de un lote en su lugar, o halladas allí aunque los libros no las conocían.',
  addExtra: 'Agregar plantas',
  extraLegend: (number) => `Más plantas, ${number}`,
  extraLine: 'Para qué renglón',
  extraLot: 'Lote',
  extraFrom: 'Tomadas de',
  extraUnits: 'Plantas',
  fromPlace: (code, units) => `${code}: hay ${units}`,
  fromFound: 'Halladas: los libros no las conocían',
  removeExtra: (number) => `Quitar más plantas ${number}`,
  noLots: 'Ningún lote abierto de esta planta en este envase.',

  returnLead:
    'Las macetas sin abrir vuelven con su lote y su reloj. Lo que se sacó de la maceta se pierde, o se pone en maceta de nuevo desde su página cuando haya vuelto.',
  returned: 'Sin abrir, de vuelta',
  lost: 'Perdidas',
  returnPlace: 'Adónde van las macetas sin abrir',
  quarantineSuggested: 'Se sugiere cuarentena: estuvieron en un jardín y pueden traer sus plagas.',
  cause: 'Por qué se perdieron',
  returnUnits: (back, lost) =>
    [back > 0 ? `Devolver ${back}` : '', lost > 0 ? `anotar ${lost} como perdidas` : '']
      .filter(Boolean)
      .join(', ')
      .replace(/^./, (letter) => letter.toUpperCase()),
  returnedToast: (back, lost) =>
    [
      back > 0 ? plural(back, { one: '# planta devuelta', other: '# plantas devueltas' }) : '',
      lost > 0 ? plural(lost, { one: '# planta perdida', other: '# plantas perdidas' }) : '',
    ]
      .filter(Boolean)
      .join(', '),

  causes: {
    'looks-dead': 'parece muerta',
    winter: 'invierno',
    drought: 'sequía',
    rot: 'pudrición',
    pests: 'plagas',
    animals: 'animales',
    weather: 'tiempo',
    mishandled: 'dañada al manejarla',
    discarded: 'desechada',
    failed: 'no prendió',
    unknown: 'no se sabe',
  },
};
