import type { pull as english } from '../../en/gardens/pull.ts';
import { days, plural } from '../words.ts';

const plants = (count: number): string => plural(count, { one: '# planta', other: '# plantas' });

export const pull: typeof english = {
  title: (code) => `Lista para sacar ${code}`,
  toPullTitle: 'Por sacar',
  toPullLead: 'Pedidos abiertos para las próximas dos semanas, los atrasados primero.',
  nothingToPull: 'Nada por sacar',
  nothingToPullText: 'Ningún pedido abierto es para las próximas dos semanas.',
  toPullCaption: (count) => plural(count, { one: '# pedido', other: '# pedidos' }),
  toPull: (count) => plural(count, { zero: 'nada por sacar', one: '# por sacar', other: '# por sacar' }),
  for: (client, site) => (site ? `${client}, ${site}` : client),
  issue: 'Emitir la lista',
  issueAgain: 'Emitirla de nuevo',
  issued: 'La lista está emitida: sus plantas quedan atadas a este pedido.',
  issuedOn: (on) => `Emitida el ${days.long(on)}.`,
  notIssued: 'Sin emitir: lo que nombra aún puede cambiar. Emitirla ata estas plantas al pedido.',
  print: 'Imprimir',
  pulledOn: 'Sacadas el',
  atPlace: (count) => `${plants(count)} aquí`,
  pullAll: (place, count) => `Sacar las ${count} de ${place}`,
  pullUnits: (count) => `Sacar ${count}`,
  pullRow: (count, lot) => `Sacar ${count} de ${lot}`,
  unitsToPull: (lot) => `Plantas de ${lot} por sacar`,
  pulled: (count, code) =>
    plural(count, { one: `# planta sacada para ${code}.`, other: `# plantas sacadas para ${code}.` }),
  checked: 'Cepellón revisado',
  notChecked: 'Cepellón sin revisar',
  notCheckedTitle: 'Cepellón sin revisar',
  notCheckedText: (lots) =>
    `Nadie ha mirado el cepellón de ${lots.join(', ')}. Saque una planta de su maceta: unas raíces que no sujetan la tierra se pierden al plantar.`,
  itHolds: 'Miré: sacarlas',
  leaveThem: 'Dejarlas',
  seeCautions: 'Venenosa o dañina: lea abajo sus advertencias.',
  held: 'Retenido',
  closed: (until, reason) => `Cerrado hasta ${until}${reason ? `: ${reason}` : ''}. Antes no entra nadie.`,
  forBed: (bed) => `para ${bed}`,
  nothingHere: 'Nada por sacar',
  nothingHereText: 'No hay plantas de lotes reservadas para este pedido, o ya se sacaron todas.',
  allPulled: 'Todo lo reservado está sacado',
  allPulledText: 'Lo sacado espera apartado para este pedido.',
  notPottedTitle: 'Aún sin maceta',
  notPotted: (plant, units, batch, ready) =>
    `${plant}: ${plants(units)} crecen todavía en ${batch}${ready ? `, se esperan el ${days.long(ready)}` : ''}.`,
  shortTitle: 'Faltan',
  short: (plant, container, units) =>
    `${plant} en ${container}: ${plural(units, { one: 'falta #', other: 'faltan #' })}`,
  stagedTitle: 'Sacadas y en espera',
  staged: (plant, container, units, lot) => `${plant} en ${container}: ${units} de ${lot}`,
  careTitle: 'Qué saber de estas plantas',
  workTitle: 'Antes de cavar y plantar',
  digging:
    'Haga localizar los cables y tuberías enterrados antes de cavar, espere las marcas y manténgase lejos de ellas.',
  deferring:
    'Estas advertencias son recordatorios, no consejos de tratamiento. Donde se usan pesticidas, la etiqueta del producto es la ley; los códigos locales, las reglas del sitio y la práctica con licencia van antes que todo lo escrito aquí.',
  poisonous:
    'Si alguien comió de una planta, o si su savia tocó ojos o piel, llame al centro de intoxicaciones o al médico; para animales, al veterinario.',
};
