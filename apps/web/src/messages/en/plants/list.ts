import { plural } from '../words.ts';

export const list = {
  title: 'Plants',
  lead: (count: number) => plural(count, { one: '# plant', other: '# plants' }),
  add: 'Add a plant',
  search: 'Scientific name, common name or code',
  rootHabit: 'Roots',
  anyRoots: 'All kinds of roots',
  host: 'Caterpillars',
  hostYes: 'food for caterpillars',
  hostNo: 'not known as their food',
  anyHost: 'All plants',
  shown: 'Shown',
  grown: 'grown here',
  retired: 'retired',
  columns: { name: 'Plant', code: 'Code', rootHabit: 'Roots', units: 'In pots', lots: 'Lots' },
  none: 'none',
  emptyTitle: 'No plants yet',
  emptyText: 'Begin with the reference plants of the Upper Midwest, or add your own.',
  loadReference: 'Load the reference plants',
  loaded: (count: number) =>
    plural(count, { zero: 'Everything was there already.', one: '# plant was added.', other: '# plants were added.' }),
  noMatchTitle: 'No plant matches',
  noMatchText: 'Try fewer letters, another name of it, or clear the filters.',
};
