import { plural } from '../words.ts';

export const today = {
  title: (day: string) => `Today, ${day}`,
  documentTitle: 'Today',
  leave: 'Must leave its pot',
  leaveAside: (past: number, due: number) => `${past} past, ${due} due`,
  leaveNone: 'Nothing is due.',
  leaveAll: 'The whole board',
  pull: 'To be pulled',
  pullNone: 'No order is due in the next two weeks.',
  pullUnits: (units: number) => plural(units, { one: '1 plant to pull', other: '# plants to pull' }),
  pullList: 'Pull list',
  short: 'Short',
  shortNone: 'Every open order is filled.',
  shortBy: (short: number, units: number) => `${short} of ${units} short`,
  shortAll: 'All orders',
  work: 'Work',
  takeIn: 'Take in stock',
  startBatch: 'Start a batch',
  newOrder: 'New garden order',
  stock: 'Find a lot',
  more: (count: number) => plural(count, { one: 'and 1 more', other: 'and # more' }),
};
