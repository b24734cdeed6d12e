import { plants } from '../propagation/words.ts';

export const outlook = {
  title: 'Supply and demand',
  lead: 'One plant in one pot, week by week: what can go out beside what is wanted. The plan’s own batches are not in it yet.',
  item: 'Plant and pot',
  choose: 'Choose a plant',
  wantedUnits: (demand: number, supply: number) => `${demand} wanted, ${supply} here or on the way`,
  chart: (item: string) => `Supply and demand of ${item} by week`,
  legend: { cautious: 'can go out, cautious', usual: 'can go out, usual', demand: 'wanted', short: 'lacking' },
  legendNote:
    'Each week shows what can go out in it after all that is wanted before has gone, with the losses expected until then.',
  week: 'Week from',
  cautious: 'Cautious',
  usual: 'Usual',
  orders: 'Orders',
  expected: 'Expected',
  short: 'Lacking',
  shortOf: (cautious: number, usual: number) =>
    cautious === usual ? String(cautious) : `${cautious} (usually ${usual})`,
  none: 'nothing',
  met: 'met',
  enough: 'All that is wanted in these weeks can be met.',
  lacking: 'lacking',
  lacks: (units: number, day: string) => `${plants(units)}, the first in the week of ${day}.`,
  chartTop: (most: number) => `Top of the chart: ${plants(most)}`,
  onlyWeeks: 'Weeks in which something changes',
  emptyTitle: 'There is nothing to set against each other',
  emptyText: 'Once plants stand, are on the way, ordered or expected, they can be chosen here.',
};
