import type { SourceKind, SourceOrigin } from '@rootclock/domain';
import { plural } from '../words.ts';

const kinds: Record<SourceKind, string> = {
  'seed-collection': 'seed collected',
  'bought-seed': 'bought seed',
  'mother-plants': 'mother plants here',
  'in-ground-bed': 'nursery bed here',
  'bought-plants': 'bought plants',
  unknown: 'not known',
};
const origins: Record<SourceOrigin, string> = { wild: 'wild', cultivated: 'cultivated', unknown: 'not known' };

export const sources = {
  kinds,
  origins,
  title: 'Sources',
  search: 'Code, plant, provenance or vendor',
  add: 'Add a source',
  edit: 'Edit',
  retire: 'Retire',
  restore: 'Bring back',
  save: 'Save the source',
  retired: 'retired',
  retiredNow: (code: string) => `${code} is retired and no longer offered.`,
  restoredNow: (code: string) => `${code} is back in use.`,
  added: (code: string) => `Saved. Its code is ${code}.`,
  none: 'No sources yet',
  noneText: 'A source says where seed, cuttings or bought plants came from. Taking stock in makes sources as well.',
  noMatch: 'No source matches',
  noMatchText: 'Take a filter away, or look among the retired ones.',
  plant: 'Plant',
  kind: 'Kind',
  anyKind: 'Any kind',
  state: 'Show',
  states: { open: 'in use', retired: 'retired', all: 'all' },
  provenance: 'Provenance',
  provenanceHint: 'Where it grew: a county, a remnant, a grower’s own field.',
  seedZone: 'Seed zone',
  origin: 'Wild or cultivated',
  gathered: 'Gathered',
  collector: 'Collector',
  permit: 'Permit',
  vendor: 'Vendor',
  vendorLot: 'Vendor’s lot',
  pesticideStatement: 'Pesticide statement',
  motherLot: 'Mother lot',
  motherLotHint: 'The lot that gives seed, cuttings or divisions. It loses no units by it.',
  note: 'Note',
  code: 'Code',
  onHand: 'On hand',
  what: 'What came of it',
  batches: 'Batches',
  lots: 'Lots',
  gardens: 'Planted in',
  daughters: 'Sources gathered from it',
  nothingYet: 'Nothing has come of it yet.',
  notPlanted: 'None of it was planted in a garden yet.',
  units: (count: number) => plural(count, { one: '# plant', other: '# plants' }),
  inUse: (lots: number, batches: number) =>
    [
      lots && plural(lots, { one: '# lot', other: '# lots' }),
      batches && plural(batches, { one: '# batch', other: '# batches' }),
    ]
      .filter(Boolean)
      .join(', '),
  shownOf: (shown: number, total: number) => `The first ${shown} of ${total}.`,
  plantedUnits: (count: number, day: string) =>
    `${plural(count, { one: '# plant', other: '# plants' })}, last on ${day}`,
  from: (code: string) => `from ${code}`,
  closed: 'used up',
  reIdentifyHint: 'Every batch and lot of this source is renamed with it. Promises for the old name are freed.',
  reIdentified: (code: string, lots: number, batches: number) =>
    `${[`${code} renamed`, lots && plural(lots, { one: '# lot', other: '# lots' }), batches && plural(batches, { one: '# batch', other: '# batches' })].filter(Boolean).join(', ')}. Labels keep their codes.`,
};
