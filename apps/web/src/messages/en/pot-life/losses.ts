import type { promises } from '@rootclock/contracts';
import type { EntryKind } from '@rootclock/domain';
import { days, plural } from '../words.ts';

const entries: Record<EntryKind, string> = {
  opening: 'taken in',
  receive: 'received',
  start: 'started',
  count: 'counted fewer',
  pot: 'fewer came through potting',
  'pot-up': 'potted up',
  convert: 'converted',
  split: 'split',
  merge: 'merged',
  move: 'moved to quarantine',
  lose: 'plants written off',
  're-identify': 'found to be another plant',
  hold: 'put on hold',
  release: 'released',
  pull: 'pulled for another order',
  plant: 'planted for another order',
  return: 'brought back',
  sell: 'sold',
  give: 'given away',
  observe: 'looked at, less or later is expected of it',
  treat: 'treated',
  close: 'closed',
  reverse: 'an entry was taken back',
};
const others: Record<Exclude<promises.LossSource, 'entry'>, string> = {
  order: 'given to another order',
  day: 'a day passed',
  setting: 'a setting was changed',
};
const whys: Partial<Record<promises.LostWhy, string>> = {
  'not-ready': 'ready later than the order’s day',
  'past-plant-by': 'past the plant-by day by then',
  treated: 'the order asks for untreated plants',
};

/** Orders that lost plants, on the day's page. */
export const losses = {
  title: 'Orders that lost plants',
  cause: ({ units, happenedOn, source, entryKind, personName, codes, whys: reasons }: promises.LossCause): string => {
    const what = entryKind ? entries[entryKind] : source === 'entry' ? '' : others[source];
    const said = [
      codes.join(', '),
      what,
      ...reasons.map((why) => whys[why] ?? ''),
      personName ? `by ${personName}` : '',
    ].filter((part) => part !== '');
    return `${plural(units, { one: '1 plant', other: '# plants' })} lost on ${days.long(happenedOn)}: ${said.join(', ')}.`;
  },
  ways: { serve: 'Who could serve', accept: 'Another plant', day: 'Move the day', aside: 'Set aside' },
  start: 'What to start',
  /** What is on the button, for whoever hears it without seeing where it stands. */
  about: (way: string, line: string) => `${way}: ${line}`,
  asideTitle: 'Set the loss aside',
  asideText: (order: string, short: number) =>
    `${order} stays ${short} short, but is no longer named among the orders that lost plants. What it loses later is named again.`,
  note: 'What was agreed',
  isAside: (order: string) => `The loss of ${order} is set aside.`,
};
