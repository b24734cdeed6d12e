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

  client: 'Cliente',
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

  wanted: (count) => plural(count, { one: '# pedida', other: '# pedidas' }),
  reserved: (count) => plural(count, { one: '# reservada', other: '# reservadas' }),
  pulled: (count) => plural(count, { one: '# sacada', other: '# sacadas' }),
  planted: (count) => plural(count, { one: '# plantada', other: '# plantadas' }),
  handedOver: (count) => plural(count, { one: '# entregada', other: '# entregadas' }),
  short: (count) => plural(count, { one: 'falta #', other: 'faltan #' }),
  allReserved: (count) => plural(count, { one: 'La única planta, reservada', other: 'Las # reservadas' }),
  allPulled: (count) => plural(count, { one: 'La única planta, sacada', other: 'Las # sacadas' }),
  allPlanted: (count) => plural(count, { one: 'La única planta, plantada', other: 'Las # plantadas' }),
  allHandedOver: (count) => plural(count, { one: 'La única planta, entregada', other: 'Las # entregadas' }),
  noLines: 'Todavía sin renglones',
  progress: 'Cómo va',

  plantBy: (on, away) => `plantar a más tardar el ${days.long(on)}, ${away}`,
  plantByPast: (on, away) => `debió plantarse a más tardar el ${days.long(on)}, ${away}`,
  noLimit: 'sin límite de tiempo en la maceta',
  noWindow: 'no queda época de plantación antes de su límite',
  leaveBy: (on) => `sale de aquí a más tardar el ${days.long(on)}`,
  readyOn: (on) => `se espera lista el ${days.long(on)}`,
  readyUnknown: 'aún no se sabe cuándo estará lista',
  notChecked: 'cepellón sin revisar',

  flags: { 'ambiguous-name': 'Nombre compartido', 'not-native': 'No es nativa aquí', 'livestock-near': 'Ganado cerca' },
  ambiguousName:
    'La gente da el mismo nombre común a otras plantas. Guíese por el nombre científico; otros pueden querer decir:',
  andMore: (count) => plural(count, { one: 'y # más', other: 'y # más' }),
  notNative: (plant, region) => `${plant} no figura como nativa de ${region ?? 'la región de este sitio'}.`,
  livestockNear: (plant) =>
    `${plant} es venenosa para los animales y cerca de este sitio hay ganado. Pregunte al cliente por dónde andan los animales y mantenga plantas y recortes fuera de su alcance.`,

  sun: { 'full-sun': 'pleno sol', 'part-sun': 'sol parcial', shade: 'sombra' },
  moisture: { dry: 'seco', medium: 'medio', moist: 'húmedo', wet: 'mojado' },
};
