import type { shared as english } from '../../en/orders/shared.ts';
import { days, plural } from '../words.ts';

export const shared: typeof english = {
  tabs: 'Jardines',
  ordersTab: 'Pedidos',
  toPullTab: 'Por sacar',
  clientsTab: 'Clientes',

  kinds: { installation: 'Instalación', pickup: 'Recogida', 'contract-growing': 'Cultivo por encargo' },
  kindHints: {
    installation: 'Las plantamos en el jardín del cliente.',
    pickup: 'El cliente las recoge y las planta.',
    'contract-growing': 'Las cultivamos para un día posterior.',
  },
  states: { open: 'abierto', done: 'terminado', cancelled: 'cancelado' },

  site: 'Sitio',
  bed: 'Jardinera',
  noBed: 'Ninguna jardinera en particular',
  noSite: 'Sin sitio',
  onDay: 'Día',
  note: 'Nota',
  kind: 'Tipo',
  plant: 'Planta',
  container: 'Envase',
  units: 'Plantas',
  unitsOf: (count) => plural(count, { one: '# planta', other: '# plantas' }),
  inContainer: (count, container) => `${plural(count, { one: '#', other: '#' })} en ${container}`,
  dueOn: (on, away) => `${days.long(on)}, ${away}`,
  edit: 'Cambiar',
  save: 'Guardar',
  undone: 'Deshecho.',
};
