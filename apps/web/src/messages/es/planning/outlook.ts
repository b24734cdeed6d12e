import type { Messages } from '../../en/index.ts';
import { plants } from '../propagation/words.ts';

export const outlook: Messages['planning']['outlook'] = {
  title: 'Oferta y demanda',
  lead: 'Una planta en una maceta, semana a semana: lo que puede salir junto a lo que se quiere. Los lotes del plan aún no están aquí.',
  item: 'Planta y maceta',
  choose: 'Elija una planta',
  wantedUnits: (demand, supply) => `${demand} pedidas o esperadas, ${supply} aquí o en camino`,
  chart: (item) => `Oferta y demanda de ${item} por semana`,
  legend: { cautious: 'puede salir, con cautela', usual: 'puede salir, usual', demand: 'se quiere', short: 'falta' },
  legendNote:
    'Cada semana muestra lo que puede salir en ella cuando ya salió todo lo anterior, con las pérdidas esperadas hasta entonces.',
  week: 'Semana desde',
  cautious: 'Con cautela',
  usual: 'Usual',
  orders: 'Pedidos',
  expected: 'Esperado',
  short: 'Falta',
  shortOf: (cautious, usual) => (cautious === usual ? String(cautious) : `${cautious} (usualmente ${usual})`),
  none: 'nada',
  met: 'servido',
  enough: 'Todo lo que se quiere en estas semanas se puede servir.',
  lacking: 'falta',
  lacks: (units, day) => `${plants(units)}, las primeras en la semana del ${day}.`,
  chartTop: (most) => `Arriba del gráfico: ${plants(most)}`,
  onlyWeeks: 'Semanas en que algo cambia',
  emptyTitle: 'No hay nada que comparar',
  emptyText: 'Cuando haya plantas, lotes en camino, pedidos o necesidades esperadas, se pueden elegir aquí.',
};
