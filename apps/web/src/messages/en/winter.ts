import { plural } from './words.ts';

const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });

export const winter = {
  count: 'Spring count',
  title: (what: string) => `Spring count: ${what}`,
  lead: 'Up, dead and not yet up together are what stands there. Leave a lot empty that you have not counted.',
  stands: (count: number, pot: string) => `${plants(count)} · ${pot}`,
  up: 'Up',
  dead: 'Dead',
  notUp: 'Not yet up',
  restUp: 'The rest is up',
  left: (left: number) =>
    left > 0 ? `${plants(left)} still to be told apart` : `${plants(-left)} more than stand there`,
  sums: 'Adds up',
  last: (on: string, up: number, dead: number, notUp: number) =>
    `Counted ${on}: ${up} up, ${dead} dead, ${notUp} not yet up`,
  field: (what: string, code: string, place: string) => `${what}: ${code} at ${place}`,
  save: 'Save the count',
  saved: (up: number, dead: number, notUp: number) => `${up} up, ${dead} dead, ${notUp} not yet up.`,
  differs: 'The numbers do not sum to what stands there',
  differsLine: (lot: string, place: string, standing: number, counted: number) =>
    `${lot} at ${place}: ${standing} stand, you counted ${counted}`,
  book: 'Book the difference',
  bookHint: 'Fewer are booked as unexplained, more as found.',
  nothing: 'Nothing stands here to be counted.',
  notUpTitle: 'Not yet up',
  notUpLine: (count: number, standing: number) => `${count} of ${standing}`,
  waits: (until: string) => `may still come up until ${until}`,
  asks: (until: string) =>
    `should have come up by ${until}: write them off, or count them as not yet up once more to keep them for another year`,
  answer: 'Count again',
  dues: 'Winter',
  duesLead: 'Days of every year on which something is due here. They come up among the tasks.',
  cover: 'Cover',
  bait: 'Set vole bait',
  uncover: 'Uncover',
  baitHint:
    'Baits are pesticides: the label is the law, and local codes may ask for a licence. Keep them from pets and wildlife.',
  benchArea: 'Bench area',
  benchAreaHint: 'What plants can stand on. The plan of what to start reckons with it.',
  squareMetres: 'm²',
  living: 'Expected to live',
  livingLead: 'What will probably still live on a day, from what this nursery lost of the plant so far.',
  byPlantBy: (on: string) => `By the plant-by day, ${on}`,
  chosenDay: 'On another day',
  about: (living: number, of: number) => `about ${living} of ${of}`,
  winterShare: (share: string) => `${share} live through a winter`,
  rate: (perHundred: string) => `${perHundred} in a hundred are lost in a month of growing`,
  restsOn: (losses: number, plantDays: string) =>
    `Rests on ${plural(losses, { one: '# loss', other: '# losses' })} in ${plantDays} plant-days`,
  restsOnWinter: (lived: number, stood: number, lots: number) =>
    `${lived} of ${stood} plants in ${plural(lots, { one: '# lot', other: '# lots' })} lived through winter`,
  noWinter: 'No spring count yet: the nursery’s own figure alone',
  noDays: 'Nothing stood in pots so far: an assumed rate alone',
};
