import type { BedMoisture, BedSun, LineFlag, OrderKind, OrderState } from '@rootclock/domain';
import { days, plural } from '../words.ts';

/** Words that several screens of gardens share. */
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

  client: 'Client',
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

  wanted: (count: number) => plural(count, { one: '# wanted', other: '# wanted' }),
  reserved: (count: number) => plural(count, { one: '# reserved', other: '# reserved' }),
  pulled: (count: number) => plural(count, { one: '# pulled', other: '# pulled' }),
  planted: (count: number) => plural(count, { one: '# planted', other: '# planted' }),
  handedOver: (count: number) => plural(count, { one: '# handed over', other: '# handed over' }),
  short: (count: number) => plural(count, { one: '# short', other: '# short' }),
  allReserved: (count: number) => plural(count, { one: 'The one plant reserved', other: 'All # reserved' }),
  allPulled: (count: number) => plural(count, { one: 'The one plant pulled', other: 'All # pulled' }),
  allPlanted: (count: number) => plural(count, { one: 'The one plant planted', other: 'All # planted' }),
  allHandedOver: (count: number) => plural(count, { one: 'The one plant handed over', other: 'All # handed over' }),
  noLines: 'No lines yet',
  progress: 'How far it has come',

  plantBy: (on: string, away: string) => `plant by ${days.long(on)}, ${away}`,
  plantByPast: (on: string, away: string) => `should have been planted by ${days.long(on)}, ${away}`,
  noLimit: 'no limit to its time in the pot',
  noWindow: 'no planting window is left before its limit',
  leaveBy: (on: string) => `leaves here by ${days.long(on)}`,
  readyOn: (on: string) => `expected to be ready on ${days.long(on)}`,
  readyUnknown: 'nobody knows yet when it is ready',
  notChecked: 'root ball not checked',

  flags: {
    'ambiguous-name': 'Name shared',
    'not-native': 'Not native here',
    'livestock-near': 'Livestock near',
  } satisfies Record<LineFlag, string>,
  ambiguousName: 'People give the same common name to other plants. Go by the scientific name; others may mean:',
  andMore: (count: number) => plural(count, { one: 'and # more', other: 'and # more' }),
  notNative: (plant: string, region: string | null) =>
    `${plant} is not listed as native to ${region ?? 'the region of this site'}.`,
  livestockNear: (plant: string) =>
    `${plant} is poisonous to animals, and livestock is kept near this site. Ask the client where the animals go, and keep plants and trimmings out of their reach.`,

  sun: { 'full-sun': 'full sun', 'part-sun': 'part sun', shade: 'shade' } satisfies Record<BedSun, string>,
  moisture: { dry: 'dry', medium: 'medium', moist: 'moist', wet: 'wet' } satisfies Record<BedMoisture, string>,
};
