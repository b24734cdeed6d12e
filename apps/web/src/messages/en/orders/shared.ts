import type { OrderKind, OrderState } from '@rootclock/domain';
import { days, plural } from '../words.ts';

/** Words that several screens of orders share. */
export const shared = {
  tabs: 'Gardens',
  ordersTab: 'Orders',
  toPullTab: 'To pull',
  clientsTab: 'Clients',

  kinds: { installation: 'Installation', pickup: 'Pickup', 'contract-growing': 'Contract growing' } satisfies Record<
    OrderKind,
    string
  >,
  kindHints: {
    installation: 'We plant them in the client’s garden.',
    pickup: 'The client fetches them and plants them.',
    'contract-growing': 'We grow them for a later day.',
  } satisfies Record<OrderKind, string>,
  states: { open: 'open', done: 'done', cancelled: 'cancelled' } satisfies Record<OrderState, string>,

  site: 'Site',
  bed: 'Bed',
  noBed: 'No bed in particular',
  noSite: 'No site',
  onDay: 'Day',
  note: 'Note',
  kind: 'Kind',
  plant: 'Plant',
  container: 'Container',
  units: 'Plants',
  unitsOf: (count: number) => plural(count, { one: '# plant', other: '# plants' }),
  inContainer: (count: number, container: string) => `${plural(count, { one: '#', other: '#' })} in ${container}`,
  dueOn: (on: string, away: string) => `${days.long(on)}, ${away}`,
  edit: 'Change',
  save: 'Save',
  undone: 'Taken back.',
};
