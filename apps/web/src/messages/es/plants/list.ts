import type { list as english } from '../../en/plants/list.ts';
import { plural } from '../words.ts';

export const list: typeof english = {
  title: 'Plantas',
  lead: (count) => plural(count, { one: '# planta', other: '# plantas' }),
  add: 'Añadir una planta',
  search: 'Nombre científico, común o código',
  rootHabit: 'Raíces',
  anyRoots: 'Todas las raíces',
  host: 'Orugas',
  hostYes: 'alimento de orugas',
  hostNo: 'no se sabe que lo sean',
  anyHost: 'Todas las plantas',
  shown: 'Se muestran',
  grown: 'las que se cultivan',
  retired: 'las retiradas',
  columns: { name: 'Planta', code: 'Código', rootHabit: 'Raíces', units: 'En macetas', lots: 'Lotes' },
  none: 'ninguna',
  emptyTitle: 'Todavía no hay plantas',
  emptyText: 'Comience con las plantas de referencia del Medio Oeste alto o añada las suyas.',
  loadReference: 'Cargar las plantas de referencia',
  loaded: (count) =>
    plural(count, { zero: 'Todo estaba ya.', one: 'Se añadió # planta.', other: 'Se añadieron # plantas.' }),
  noMatchTitle: 'Ninguna planta coincide',
  noMatchText: 'Escriba menos letras, otro de sus nombres, o quite los filtros.',
};
