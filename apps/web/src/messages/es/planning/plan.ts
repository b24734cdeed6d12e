import type { Messages } from '../../en/index.ts';
import { grams, plural } from '../words.ts';
import { plants } from '../propagation/words.ts';

const trays = (count: number) => plural(count, { one: '# bandeja', other: '# bandejas' });
const cells = (count: number) => plural(count, { one: '# celda', other: '# celdas' });
const pieces = (count: number) => plural(count, { one: '# pieza', other: '# piezas' });
const seeds = (count: number) => plural(count, { one: '# semilla', other: '# semillas' });

export const plan: Messages['planning']['plan'] = {
  title: 'Qué empezar',
  covers: (served, missing) =>
    missing === 0
      ? 'No falta nada.'
      : `Faltan ${plants(missing)}; este plan da ${plural(served, { one: '#', other: '#' })} a tiempo.`,
  madeOf: (lines, expected) =>
    `De ${plural(lines, { one: '# línea de pedido abierta', other: '# líneas de pedidos abiertas', zero: 'ningún pedido abierto' })} y ${plural(expected, { one: '# necesidad esperada', other: '# necesidades esperadas', zero: 'ninguna necesidad esperada' })}, menos lo que hay y lo que viene.`,
  confidence: 'Qué tan seguro debe ser cada lote',
  confidenceOf: (percent) => `${percent} seguro`,
  usualOf: (percent) => `${percent} seguro, como siempre aquí`,
  confidenceHint:
    'De que un lote dé todo lo que se le pide. Más seguro pide más unidades y un comienzo más temprano: por debajo del 75 % cuentan las duraciones usuales, desde el 90 % las largas.',
  place: 'Lugar para lo que empiece desde aquí',
  placeHint: 'Queda anotado para los lotes siguientes.',
  weekOf: (day) => `Semana del ${day}`,
  thisWeek: (day) => `Esta semana, desde el ${day}`,
  batches: (count) => plural(count, { one: '# lote', other: '# lotes' }),
  states: { coming: 'a tiempo', due: 'empezar esta semana', overdue: 'atrasado', 'too-late': 'demasiado tarde' },
  startBy: (amount, day) => `Empiece ${amount} a más tardar el ${day}`,
  startOnDay: (amount, day) => `Empiece ${amount} el ${day}, cuando abre su temporada`,
  mayBeLate: 'puede llegar tarde',
  startAtOnce: (amount) => `Empiece ${amount} cuanto antes`,
  startedToday: (amount) => `Si empieza ${amount} hoy`,
  startedOn: (amount, day) => `Si empieza ${amount} el ${day}, cuando abre su temporada`,
  inTrays: (count, of) => `${trays(count)} (${cells(of)})`,
  inFlats: (count, of) => `${trays(count)} (${seeds(of)})`,
  inPacks: (count, of) => `${plural(count, { one: '# paquete', other: '# paquetes' })} para ${cells(of)}`,
  cells,
  pieces,
  trays,
  seeds,
  ready: (count, day) => `${plants(count)} para el ${day}`,
  usuallyReady: (day) => `lo usual es el ${day}`,
  overdueSince: (missed) => `El último día seguro era el ${missed}.`,
  inTimeUsually: (target) => `A su paso usual aún está para el ${target}.`,
  inTimeQuickly: (target) => `Solo está para el ${target} si va rápido.`,
  tooLateSince: (missed, target) => `Para estar el ${target} había que empezarlo a más tardar el ${missed}.`,
  firstReady: (surely, usually) =>
    `Entonces suele estar listo el ${usually}; para estar seguro, cuente con el ${surely}.`,
  canGoOut: (day) => `El primer día para plantarlo después es el ${day}.`,
  source: 'De',
  seed: 'Semilla que tomar',
  seedOf: (taken, left) => `${taken} de ${left} que quedan`,
  seedUnweighed: (taken) => `${taken}; lo que queda nunca se pesó`,
  seedUnknown: (count) => `${seeds(count)}; no se sabe cuántas pesa un gramo de esta procedencia`,
  seedsEach: (count) => plural(count, { one: '# semilla por celda', other: '# semillas por celda' }),
  window: 'Época de plantación',
  windowFrom: (from, to) => `del ${from} al ${to}`,
  medium: 'Sustrato',
  bench: 'Espacio en mesas',
  benchOf: (area, from, to) => `hasta ${area}, del ${from} al ${to}`,
  noBench: 'ninguno',
  target: 'En',
  gets: 'Da',
  getsOf: (sure, usual) => `${plants(sure)} para estar seguro, ${usual} de ordinario`,
  potLife: 'Vida en maceta después',
  potLifeUntil: (day) => `hay que plantarlo a más tardar el ${day}`,
  potLifeNone: 'sin límite',
  potLifePasses: (limit, wanted) =>
    `Habría que plantarlo a más tardar el ${limit}, antes de que se quiera lo último el ${wanted}.`,
  potLater: (day) => `Trasplántelo el ${day} o después, o empiece más tarde un segundo lote.`,
  emergeLater: (day) => `Tendría que brotar el ${day} o después: empiece un segundo lote para los días posteriores.`,
  forWhom: 'Para',
  ofOrder: (units, order, client, day) => `${units} para ${order}, ${client}, el ${day}`,
  ofExpected: (units, day, note) => `${units} esperadas desde el ${day}${note ? `: ${note}` : ''}`,
  served: (units, of) => `${units} de ${of}`,
  restsOn: 'En qué se apoya',
  passes: (percent) => `El ${percent} de lo que se empieza llega a estar listo`,
  passesStage: (stage, percent, tried, batches) =>
    tried === 0
      ? `${stage}: ${percent}, la cifra del protocolo; aún no se contó nada`
      : `${stage}: ${percent}, de ${tried} contadas en ${plural(batches, { one: '# lote', other: '# lotes' })} y la cifra del protocolo`,
  begins: (stage, day) => `${stage} desde el ${day}`,
  readyOn: (day) => `Listo a más tardar el ${day}`,
  protocol: 'Protocolo',
  start: 'Empezar este lote',
  startOf: (what) => `Empezar este lote: ${what}`,
  startNow: (place) => `Empezarlo ahora en ${place}`,
  startNowOf: (what, place) => `Empezarlo ahora en ${place}: ${what}`,
  choosePlace: 'Elija arriba un lugar para empezarlo con un toque.',
  started: (code) => `Se empezó ${code}.`,
  tooLate: 'Demasiado tarde para su día',
  tooLateLead:
    'Para esto no hay nada planeado: ningún lote empezado hoy estaría listo. Aún se puede empezar para un día posterior.',
  gaps: 'Fuera del plan',
  gapsLead: 'Lo que falta y para lo que no se planea ningún lote, con el motivo.',
  gapExpected: (day, note) => `se espera desde el ${day}${note ? `: ${note}` : ''}`,
  gapOrder: (order, client, day) => `${order}, ${client}, el ${day}`,
  chartTop: (most) => `Arriba del gráfico: ${most}`,
  gapOf: (units, day) => `${plants(units)} para el ${day}`,
  reasons: {
    'no-protocol': 'Ningún protocolo dice cómo se cría esta planta.',
    'nothing-passes': 'Según su protocolo casi nada llega a estar listo.',
    'no-source':
      'Ninguna procedencia sirve: ninguna del tipo del método, o ninguna de la zona o el origen que pide el pedido.',
    'seed-not-fresh': 'Su semilla se siembra fresca y la guardada es demasiado vieja. Recójala en su temporada.',
    'not-enough-seed': 'La semilla no alcanza.',
    'no-space': 'Las mesas están llenas.',
    'too-far-ahead': 'Faltan más de diez años. Elija un día más cercano.',
  },
  seedShort: (needed, left) => `Para todo hacen falta ${grams(needed)}; quedan ${grams(left)}.`,
  fullWeeks: (from, to, count) =>
    plural(count, {
      one: `No hay sitio en la semana del ${from}.`,
      other: `No hay sitio en # semanas entre el ${from} y el ${to}.`,
    }),
  writeProtocol: 'Escribir un protocolo',
  seeProtocols: 'Ver sus protocolos',
  addSource: 'Ir a las procedencias',
  measurePlaces: 'Ir a los lugares',
  benchTitle: 'Espacio en mesas por semana',
  benchNote: (peak, week, capacity) => `Lo más lleno, la semana del ${week}: ${peak} de ${capacity}.`,
  benchUnknown:
    'Nadie ha medido aún una mesa, así que nada quedó fuera por falta de sitio. Anote la superficie de un lugar para planear dentro de ella.',
  benchPeak: (peak, week) => `Lo más lleno, la semana del ${week}: ${peak}.`,
  benchLegend: { standing: 'está o viene', planned: 'este plan', capacity: 'lo que hay' },
  benchTable: 'Lo mismo como tabla',
  week: 'Semana desde',
  standing: 'Está',
  planned: 'Planeado',
  together: 'En total',
  free: 'Libre',
  within: (percent) =>
    `Aquí se sopesan tantas opciones que no se probó que el plan sea el mejor; ningún otro sirve más de un ${percent} más.`,
  emptyTitle: 'No falta nada',
  emptyText: 'Lo que hay y lo que viene cubre todos los pedidos y todo lo esperado.',
  nothingWantedTitle: 'Aún no se quiere nada',
  nothingWantedText: 'Anote lo que espera necesitar la próxima temporada, o tome pedidos: el plan dice qué empezar.',
  allElsewhereTitle: 'No se puede planear ningún lote',
  allElsewhereText: 'Abajo está lo que falta y por qué.',
  neutral: (value) =>
    `Donde falta sitio, las plantas de las que nadie dijo cuánto valen cuentan ${value} cada una; los pedidos van antes que lo solo esperado.`,
};
