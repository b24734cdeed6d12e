import { plural } from '../words.ts';

/** The seed arithmetic: what so many cells take, and what they will look like. */
export const sowing = {
  title: 'Reckon a sowing',
  cells: 'Cells',
  cellsHint: 'Or holes, pots, plugs: whatever is sown singly.',
  target: 'To be filled',
  germination: 'Expected emergence',
  germinationHint: 'What comes up by itself, without hard and dormant seed.',
  purity: 'Purity',
  purityHint: 'Left empty, the seed is taken as pure.',
  seedsPerGram: 'Seeds per gram',
  seedsPerGramHint: 'Of pure seed.',
  fromPlant: (standing: string) => `The plant’s own figure (${standing}); a count of this seed would be better.`,
  perCell: 'Seeds per cell',
  seeds: 'Seeds',
  grams: 'To take from the store',
  perCellOf: (count: number) => plural(count, { one: '# seed in each cell', other: '# seeds in each cell' }),
  ofLeft: (weight: string) => `${weight} are left.`,
  tooMuch: (left: string, cells: number) =>
    `Only ${left} are left. That is enough for ${plural(cells, { one: '# cell', other: '# cells' })}.`,
  notWeighed: 'The store was never weighed, so what is left is not known.',
  gramsUnknown: 'Enter the seeds per gram to see the weight.',
  looks: 'What the tray will look like',
  empty: (count: string, share: string) => `${count} empty (${share})`,
  single: (count: string, share: string) => `${count} with one (${share})`,
  multiple: (count: string, share: string) => `${count} with several (${share})`,
  several: 'Several in a cell is normal for sedges, grasses and some mints; others are thinned to one.',
  bulk: (share: string, times: string) =>
    `Pure live seed is ${share} of the weight. Where an amount of pure live seed is asked for, take ${times} times as much from the store.`,
  bulkUnknown: 'Pure live seed is not known without purity and a test.',
  enough: 'Enter cells, the part to be filled and the expected emergence, and the rest is reckoned.',
  never: 'No number of seeds fills that part of the cells. Enter less than 100%, and an emergence above 0.',
  untested: 'This seed was never tested: the emergence is your own figure.',
  use: 'Use these figures',
};
