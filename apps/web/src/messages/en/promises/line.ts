import type { promises } from '@rootclock/contracts';
import { days, plural } from '../words.ts';

const listed = (codes: readonly string[]): string => (codes.length === 0 ? '' : ` (${codes.join(', ')})`);
const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });
const are = (count: number): string => plural(count, { one: '# is', other: '# are' });

type Reason = promises.ShortageReason;

/** One line of an order: what serves it, why it is short, and its form. */
export const line = {
  title: 'Line',
  also: 'or instead:',
  tied: 'tied',
  tiedHint: 'Tied plants stay with this line. The others may change to another lot when that serves better.',
  batch: 'not potted yet',
  tie: 'Tie to this line',
  untie: 'Untie',
  release: 'Give up',
  actionsOf: (code: string) => `More for ${code}`,
  tiedToast: (units: number, code: string) => `${plants(units)} of ${code} are tied to the line.`,
  untiedToast: (code: string) => `${code} may change again.`,
  releasedToast: (code: string) => `${code} is given up for this line.`,
  tieAgain: 'Tie again',

  undelivered: (count: number) => plural(count, { one: '# was not delivered', other: '# were not delivered' }),
  isShort: (count: number) => plural(count, { one: '# plant short', other: '# plants short' }),
  reasons: {
    'not-grown': () => 'Nothing of this plant in this container stands here or is growing.',
    'no-whole-tray': ({ units, codes }) =>
      `${plants(units)} ${units === 1 ? 'fills' : 'fill'} no whole tray${listed(codes)}.`,
    promised: ({ units, codes }) => `${are(units)} promised to others${listed(codes)}.`,
    held: ({ units, codes }) => `${are(units)} on hold or in quarantine${listed(codes)}.`,
    'provenance-zone': ({ units, codes }) => `${are(units)} from another seed zone${listed(codes)}.`,
    'provenance-unknown': ({ units, codes }) => `${are(units)} of an unknown seed zone${listed(codes)}.`,
    'not-wild-type': ({ units, codes }) => `${are(units)} not of wild type${listed(codes)}.`,
    'wild-type-unknown': ({ units, codes }) => `${are(units)} not known to be of wild type${listed(codes)}.`,
    treated: ({ units, codes }) => `${are(units)} treated${listed(codes)}.`,
    'treatment-unknown': ({ units, codes }) => `${are(units)} not known to be untreated${listed(codes)}.`,
    'not-native': ({ units, codes }) => `${are(units)} not known to be native to the site’s region${listed(codes)}.`,
    'not-ready': ({ units, codes, day }) =>
      `${are(units)} not ready by then${listed(codes)}${day ? `; the first on ${days.long(day)}` : ''}.`,
    'past-plant-by': ({ units, codes, day }) =>
      `${are(units)} past the plant-by day by then${listed(codes)}${day ? `; their last day is ${days.long(day)}` : ''}.`,
    'released-by-hand': ({ units, codes }) => `${are(units)} given up for this line by hand${listed(codes)}.`,
  } satisfies Record<Reason['reason'], (reason: Reason) => string>,

  natives: {
    title: 'Breaks “only natives”',
    breaks: (region: string) =>
      `Not known to be native to ${region}, so none of it is reserved here. Withdraw the line or take the alternative out, or let the order take others too.`,
    noRegion:
      'The site names no region, so nothing can be called native and nothing is reserved. Set the region on the page of the site.',
  },

  alternatives: 'Takes in its stead',
  addAlternative: 'Another choice',
  removeAlternative: (number: number) => `Remove choice ${number + 1}`,
  penaltyOf: (number: number) => `Penalty of choice ${number}`,
  penaltyHint: 'The smaller goes first. Left empty, it comes behind those above.',
  penaltyIs: (penalty: number) => `penalty ${penalty}`,
  alternativesHint: 'What the client accepts when this is not to be had, the smaller penalty first.',
  wildType: 'Only wild type',
  untreated: 'Only untreated plants',
  untreatedHint: 'Lots of which nobody can say are left out too.',
  seedZone: 'Seed zone',
  seedZoneIs: (zone: string) => `Seed zone ${zone}`,
  seedZoneHint: 'As the sources name it. Lots from elsewhere, or from nobody knows where, are left out.',
  conditions: 'Conditions',

  add: 'Add a line',
  addTitle: 'New line',
  editTitle: 'Change the line',
  saved: 'The line is saved.',
  added: (plant: string, units: number) => `${plants(units)} of ${plant} added.`,
  withdraw: 'Withdraw the line',
  withdrawTitle: 'Withdraw this line?',
  withdrawText:
    'Its plants become free for others. A withdrawn line stays readable and cannot be taken up again; add a new one instead.',
  withdrawn: (plant: string) => `The line of ${plant} is withdrawn.`,
  withdrawnOn: (on: string) => `withdrawn on ${days.long(on)}`,
  moreActions: (plant: string) => `More for the line of ${plant}`,

  choose: 'Choose lots',
  chooseTitle: 'Lots that could serve',
  chooseLead: 'What must leave its pot first stands first.',
  free: (count: number) => plural(count, { zero: 'none free', one: '# free', other: '# free' }),
  onHand: (count: number) => plural(count, { one: '# there', other: '# there' }),
  tieUnits: (code: string) => `Plants of ${code}`,
  noOffers: 'No lot could serve this line',
  cannotServe: 'What cannot serve, and why',
  givenUp: 'given up by hand',

  wouldShorten: 'Others would become short',
  shorter: (
    order: string,
    client: string,
    plant: string,
    container: string,
    before: number,
    after: number,
    by: number,
  ) => `${order}, ${client}: ${plant} in ${container} has ${before} now, then ${after}: ${by} fewer.`,
  accept: 'Do it all the same',
  keepRank: 'Keep this order’s turn',
  keepRankHint: 'Otherwise it goes behind all others where that spares them.',
};
