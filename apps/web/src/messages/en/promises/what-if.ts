import type { promises } from '@rootclock/contracts';
import { days, plural } from '../words.ts';

const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });
const lines = (count: number): string => plural(count, { one: '# line', other: '# lines' });
const named = (orders: readonly string[]): string =>
  orders.map((code) => (code === '' ? 'the new order' : code)).join(', ');

/** A change that is tried before anybody makes it. */
export const whatIf = {
  tab: 'What if',
  title: 'What if',
  lead: 'Try a change and see which orders would gain or lose plants. Nothing is written until you keep it.',
  changeTitle: 'The change',
  kind: 'What would be different',
  kinds: {
    'move-order': 'An order moves to another day',
    'cancel-order': 'An order is cancelled',
    'add-order': 'A new order comes',
    'lose-lot': 'Plants of a lot are lost',
    'lose-batch': 'A batch is lost, wholly or in part',
    'change-batch': 'A batch yields less or is late',
  } satisfies Record<promises.WhatIfKind, string>,
  order: 'Order',
  orderHint: 'Its code or the client’s name.',
  orderDetail: (client: string, on: string) => `${client}, ${days.long(on)}`,
  lot: 'Lot',
  lotHint: 'Its code or a name of the plant.',
  batch: 'Batch',
  batchHint: 'Its code or a name of the plant.',
  forSite: 'Site',
  siteHint: 'Without a site the client fetches the plants.',
  lost: 'How many are lost',
  lostHint: (standing: string) => `${standing} there. Left empty, all of them are lost.`,
  broughtBackTo: 'Where its pulled plants would go',
  cautious: 'Plants that may be promised',
  cautiousNow: (count: number) => `Now ${plants(count)}.`,
  ready: 'Ready on',
  readyNow: (on: string | null) => (on === null ? 'Nobody has said when it is ready.' : `Now ${days.long(on)}.`),

  nothingTried: 'Nothing tried yet',
  nothingTriedText:
    'Choose what would be different and fill it in. What would come of it is shown here while you type.',
  nobodyAsks: 'No open order asks for these plants',
  nobodyAsksText: 'Nobody would gain or lose anything.',
  nobodyMinds: 'Every order keeps what it has',
  nobodyMindsText: (count: number) =>
    plural(count, {
      one: 'The one line that shares these plants stays as it is.',
      other: 'All # lines that share these plants stay as they are.',
    }),

  differenceTitle: 'What would come of it',
  summary: (losing: number, lost: number, gaining: number, gained: number, moving: number) =>
    [
      losing > 0 && `${lines(losing)} would lose ${plants(lost)}.`,
      gaining > 0 && `${lines(gaining)} would gain ${plants(gained)}.`,
      moving > 0 &&
        plural(moving, {
          one: '# line would get other plants and as many.',
          other: '# lines would get other plants and as many.',
        }),
    ]
      .filter(Boolean)
      .join(' '),
  unchanged: (count: number) =>
    plural(count, {
      one: '# line that shares these plants stays as it is.',
      other: '# lines that share these plants stay as they are.',
    }),
  nobodyElse: 'Nobody else is affected.',
  lineGoesLast: 'The line goes behind all others, so that nobody else becomes shorter.',
  shortTerm: 'Short in all',
  decliningTerm: 'Left to decline this season',
  nowThen: (now: number, then: number) => (now === then ? `${now}, as now` : `${now} now, then ${then}`),

  newOrder: 'The new order',
  lineOf: (order: string, client: string) => (client === '' ? order : `${order}, ${client}`),
  loses: (count: number) => `loses ${count}`,
  gains: (count: number) => `gains ${count}`,
  moves: 'gets other plants',
  same: 'keeps what it has',
  gone: 'cancelled',
  gets: (count: number, of: number) => `gets ${count} of ${of}`,
  filled: (now: number, then: number, of: number) => `${now} of ${of} now, then ${then}.`,
  onDay: (on: string) => `For ${days.long(on)}.`,
  givesUp: (units: number, code: string, why: string) => `Gives up ${units} of ${code}: ${why}.`,
  why: {
    gone: () => 'they are gone',
    'to-others': (orders) => `${named(orders)} would get them`,
    'order-gone': () => 'they become free',
    exchanged: () => 'other plants must leave their pots first',
    held: () => 'they are on hold or in quarantine',
    'provenance-zone': () => 'they are from another seed zone',
    'provenance-unknown': () => 'their seed zone is unknown',
    'not-wild-type': () => 'they are not of wild type',
    'wild-type-unknown': () => 'they are not known to be of wild type',
    treated: () => 'they were treated',
    'treatment-unknown': () => 'they are not known to be untreated',
    'not-native': () => 'they are not known to be native there',
    'not-ready': () => 'they are not ready by then',
    'past-plant-by': () => 'they are past the plant-by day by then',
    'released-by-hand': () => 'they were given up by hand',
  } satisfies Record<promises.GivenUpWhy, (orders: readonly string[]) => string>,
  takes: (units: number, code: string, orders: readonly string[]) =>
    `Gets ${units} of ${code}, ${orders.length === 0 ? 'which are free' : `given up by ${named(orders)}`}.`,
  stillShort: (count: number) => `Short by ${plants(count)}, because:`,

  keepTitle: 'Keep it or drop it',
  keep: 'Keep it',
  keepMove: (on: string) => `Keep it: move to ${days.long(on)}`,
  keepCancel: 'Keep it: cancel the order',
  keepNew: 'Keep it: write the order',
  keepLoss: 'Keep it: write off',
  keepForecast: 'Keep it: change the batch',
  keepLeaves: (count: number) =>
    plural(count, {
      one: 'Keeping it accepts that # line becomes shorter.',
      other: 'Keeping it accepts that # lines become shorter.',
    }),
  keepNewText: 'The order form opens filled in. Nothing is promised before you save it there.',
  mayNot: 'Growers and owners can keep this change.',
  drop: 'Drop it',
  dropped: 'Dropped. Nothing was changed.',
  open: 'What if',
};
