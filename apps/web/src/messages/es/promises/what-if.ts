import type { whatIf as english } from '../../en/promises/what-if.ts';
import { days, plural } from '../words.ts';

const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });
const named = (orders: readonly string[]): string =>
  orders.map((code) => (code === '' ? 'el pedido nuevo' : code)).join(', ');

export const whatIf: typeof english = {
  tab: '¿Y si…?',
  title: '¿Y si…?',
  lead: 'Pruebe un cambio y vea qué pedidos ganarían o perderían plantas. No se anota nada hasta que lo confirme.',
  changeTitle: 'El cambio',
  kind: 'Qué sería distinto',
  kinds: {
    'move-order': 'Un pedido pasa a otro día',
    'cancel-order': 'Se cancela un pedido',
    'add-order': 'Llega un pedido nuevo',
    'lose-lot': 'Se pierden plantas de un lote',
    'lose-batch': 'Se pierde una tanda, toda o en parte',
    'change-batch': 'Una tanda da menos o se retrasa',
  },
  order: 'Pedido',
  orderHint: 'Su código o el nombre del cliente.',
  orderDetail: (client, on) => `${client}, ${days.long(on)}`,
  lot: 'Lote',
  lotHint: 'Su código o un nombre de la planta.',
  batch: 'Tanda',
  batchHint: 'Su código o un nombre de la planta.',
  forSite: 'Sitio',
  siteHint: 'Sin sitio, el cliente recoge las plantas.',
  lost: 'Cuántas se pierden',
  lostHint: (standing) => `Hay ${standing}. Si lo deja vacío, se pierden todas.`,
  broughtBackTo: 'Adónde irían sus plantas ya sacadas',
  cautious: 'Plantas que se pueden prometer',
  cautiousNow: (count) => `Ahora ${plants(count)}.`,
  ready: 'Lista el',
  readyNow: (on) => (on === null ? 'Nadie ha dicho cuándo estará lista.' : `Ahora el ${days.long(on)}.`),

  nothingTried: 'Todavía no se prueba nada',
  nothingTriedText: 'Elija qué sería distinto y complételo. Lo que resultaría se muestra aquí mientras escribe.',
  nobodyAsks: 'Ningún pedido abierto pide estas plantas',
  nobodyAsksText: 'Nadie ganaría ni perdería nada.',
  nobodyMinds: 'Cada pedido conserva lo que tiene',
  nobodyMindsText: (count) =>
    plural(count, {
      one: 'El único renglón que comparte estas plantas queda como está.',
      other: 'Los # renglones que comparten estas plantas quedan como están.',
    }),

  differenceTitle: 'Lo que resultaría',
  summary: (losing, lost, gaining, gained, moving) =>
    [
      losing > 0 &&
        plural(losing, { one: `# renglón perdería ${plants(lost)}.`, other: `# renglones perderían ${plants(lost)}.` }),
      gaining > 0 &&
        plural(gaining, {
          one: `# renglón ganaría ${plants(gained)}.`,
          other: `# renglones ganarían ${plants(gained)}.`,
        }),
      moving > 0 &&
        plural(moving, {
          one: '# renglón recibiría otras plantas, las mismas en número.',
          other: '# renglones recibirían otras plantas, las mismas en número.',
        }),
    ]
      .filter(Boolean)
      .join(' '),
  unchanged: (count) =>
    plural(count, {
      one: '# renglón que comparte estas plantas queda como está.',
      other: '# renglones que comparten estas plantas quedan como están.',
    }),
  nobodyElse: 'A nadie más le afecta.',
  lineGoesLast: 'El renglón pasa detrás de todos los demás, para que a nadie más le falten plantas.',
  shortTerm: 'Faltan en total',
  decliningTerm: 'Se echarían a perder esta temporada',
  nowThen: (now, then) => (now === then ? `${now}, como ahora` : `${now} ahora, después ${then}`),

  newOrder: 'El pedido nuevo',
  lineOf: (order, client) => (client === '' ? order : `${order}, ${client}`),
  loses: (count) => `pierde ${count}`,
  gains: (count) => `gana ${count}`,
  moves: 'recibe otras plantas',
  same: 'conserva lo que tiene',
  gone: 'cancelado',
  gets: (count, of) => `recibe ${count} de ${of}`,
  filled: (now, then, of) => `${now} de ${of} ahora, después ${then}.`,
  onDay: (on) => `Para el ${days.long(on)}.`,
  givesUp: (units, code, why) => `Deja ${units} de ${code}: ${why}.`,
  why: {
    gone: () => 'ya no están',
    'to-others': (orders) => `las recibiría ${named(orders)}`,
    'order-gone': () => 'quedan libres',
    exchanged: () => 'otras plantas deben salir antes de sus macetas',
    held: () => 'están retenidas o en cuarentena',
    'provenance-zone': () => 'son de otra zona de semilla',
    'provenance-unknown': () => 'no se conoce su zona de semilla',
    'not-wild-type': () => 'no son de tipo silvestre',
    'wild-type-unknown': () => 'no se sabe si son de tipo silvestre',
    treated: () => 'fueron tratadas',
    'treatment-unknown': () => 'no se sabe si fueron tratadas',
    'not-native': () => 'no se sabe que sean nativas de allí',
    'not-ready': () => 'no estarán listas para entonces',
    'past-plant-by': () => 'para entonces habrá pasado su día de plantar',
    'released-by-hand': () => 'se dejaron a mano',
  },
  takes: (units, code, orders) =>
    `Recibe ${units} de ${code}, ${orders.length === 0 ? 'que están libres' : `que deja ${named(orders)}`}.`,
  stillShort: (count) => `Le faltan ${plants(count)}, porque:`,

  keepTitle: 'Confirmar o descartar',
  keep: 'Confirmar',
  keepMove: (on) => `Confirmar: pasar al ${days.long(on)}`,
  keepCancel: 'Confirmar: cancelar el pedido',
  keepNew: 'Confirmar: anotar el pedido',
  keepLoss: 'Confirmar: dar de baja',
  keepForecast: 'Confirmar: cambiar la tanda',
  keepLeaves: (count) =>
    plural(count, {
      one: 'Al confirmar acepta que a # renglón le falten más plantas.',
      other: 'Al confirmar acepta que a # renglones les falten más plantas.',
    }),
  keepNewText: 'Se abre el formulario del pedido ya completado. No se promete nada hasta que lo guarde allí.',
  mayNot: 'Este cambio lo pueden confirmar cultivadores y propietarios.',
  drop: 'Descartar',
  dropped: 'Descartado. No cambió nada.',
  open: '¿Y si…?',
};
