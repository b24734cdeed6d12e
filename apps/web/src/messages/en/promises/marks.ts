import type { LineFlag } from '@rootclock/domain';
import { days, plural } from '../words.ts';

/** How far an order has come, what serves its lines and until when, and what to know of them. */
export const marks = {
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
};
