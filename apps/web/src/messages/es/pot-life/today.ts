import type { Messages } from '../../en/index.ts';
import { plural } from '../words.ts';

export const today: Messages['today'] = {
  title: (day) => `Hoy, ${day}`,
  documentTitle: 'Hoy',
  leave: 'Debe salir de la maceta',
  leaveAside: (past, due) => `${past} pasadas, ${due} por salir`,
  leaveNone: 'Nada toca ahora.',
  leaveAll: 'Todo el tablero',
  pull: 'Por sacar',
  pullNone: 'Ningún pedido vence en las próximas dos semanas.',
  pullUnits: (units) => plural(units, { one: '1 planta por sacar', other: '# plantas por sacar' }),
  pullList: 'Lista para sacar',
  short: 'Falta',
  shortNone: 'Todos los pedidos abiertos están cubiertos.',
  shortBy: (short, units) => `faltan ${short} de ${units}`,
  shortAll: 'Todos los pedidos',
  work: 'Trabajo',
  takeIn: 'Registrar plantas',
  startBatch: 'Empezar una tanda',
  newOrder: 'Nuevo pedido de jardín',
  stock: 'Buscar una partida',
  more: (count) => plural(count, { one: 'y 1 más', other: 'y # más' }),
};
