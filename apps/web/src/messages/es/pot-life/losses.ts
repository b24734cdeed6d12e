import type { promises } from '@rootclock/contracts';
import type { EntryKind } from '@rootclock/domain';
import type { Messages } from '../../en/index.ts';
import { days, plural } from '../words.ts';

const entries: Record<EntryKind, string> = {
  opening: 'registrado',
  receive: 'recibido',
  start: 'empezado',
  count: 'se contaron menos',
  pot: 'se trasplantaron menos',
  'pot-up': 'pasado a otra maceta',
  convert: 'convertido',
  split: 'dividido',
  merge: 'unido',
  move: 'movido a cuarentena',
  lose: 'plantas dadas de baja',
  're-identify': 'resultó ser otra planta',
  hold: 'retenido',
  release: 'liberado',
  pull: 'sacado para otro pedido',
  plant: 'plantado para otro pedido',
  return: 'devuelto',
  sell: 'vendido',
  give: 'regalado',
  observe: 'revisado, se espera menos o más tarde',
  treat: 'tratado',
  close: 'cerrado',
  reverse: 'se anuló una anotación',
};
const others: Record<Exclude<promises.LossSource, 'entry'>, string> = {
  order: 'pasó a otro pedido',
  day: 'pasó un día',
  setting: 'cambió un ajuste',
};
const whys: Partial<Record<promises.LostWhy, string>> = {
  'not-ready': 'listo después de la fecha del pedido',
  'past-plant-by': 'para entonces habrá pasado su fecha límite',
  treated: 'el pedido exige plantas sin tratar',
};

export const losses: Messages['losses'] = {
  title: 'Pedidos que perdieron plantas',
  cause: ({ units, happenedOn, source, entryKind, personName, codes, whys: reasons }) => {
    const what = entryKind ? entries[entryKind] : source === 'entry' ? '' : others[source];
    const said = [
      codes.join(', '),
      what,
      ...reasons.map((why) => whys[why] ?? ''),
      personName ? `por ${personName}` : '',
    ].filter((part) => part !== '');
    return `${plural(units, { one: '1 planta perdida', other: '# plantas perdidas' })} el ${days.long(happenedOn)}: ${said.join(', ')}.`;
  },
  ways: { serve: 'Qué puede servir', accept: 'Otra planta', day: 'Cambiar la fecha', aside: 'Apartar' },
  start: 'Qué empezar',
  about: (way, line) => `${way}: ${line}`,
  asideTitle: 'Apartar la pérdida',
  asideText: (order, short) =>
    `A ${order} le siguen faltando ${short}, pero ya no aparece entre los pedidos que perdieron plantas. Lo que pierda después volverá a aparecer.`,
  note: 'Qué se acordó',
  isAside: (order) => `La pérdida de ${order} queda apartada.`,
};
