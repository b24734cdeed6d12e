import type { LossCause } from '@rootclock/domain';
import { plural } from '../words.ts';

const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });

/** What becomes of pulled plants: planted, handed over, or brought back. */
export const planting = {
  tabs: 'What becomes of the pulled plants',
  plantTab: 'Plant',
  handOverTab: 'Hand over',
  returnTab: 'Bring back',
  title: (code: string) => `Planting ${code}`,
  titleHandOver: (code: string) => `Handing over ${code}`,
  nothingStaged: 'Nothing is pulled',
  nothingStagedText: 'Pull plants for this order first. What was planted without being pulled can be entered below.',
  nothingStagedHandOver: 'Pull plants for this order first.',

  plantedOn: 'Planted on',
  handedOverOn: 'Handed over on',
  returnedOn: 'Brought back on',
  ofPulled: (units: number) => `of ${units} pulled`,
  unitsPlanted: 'Planted',
  unitsGiven: 'Handed over',
  all: 'All',
  none: 'None',
  forBed: (bed: string) => `for ${bed}`,
  plantUnits: (count: number) => `Plant ${count}`,
  handOverUnits: (count: number) => `Hand over ${count}`,
  nothingChosen: 'Say how many first.',
  planted: (count: number, code: string) => `${plants(count)} planted for ${code}.`,
  handedOver: (count: number, code: string) => `${plants(count)} handed over for ${code}.`,

  extraTitle: 'More than was pulled',
  extraLead:
    'Plants that went into the ground though they were never pulled: taken from a lot at its place, or found there though the books did not know them.',
  addExtra: 'Add plants',
  extraLegend: (number: number) => `More plants, ${number}`,
  extraLine: 'For which line',
  extraLot: 'Lot',
  extraFrom: 'Taken from',
  extraUnits: 'Plants',
  fromPlace: (code: string, units: number) => `${code}: ${units} there`,
  fromFound: 'Found: the books did not know them',
  removeExtra: (number: number) => `Remove more plants ${number}`,
  noLots: 'No open lot of this plant in this container.',

  returnLead:
    'Unopened pots go back with their lot and their clock. What was knocked out of its pot is lost, or potted again from its page after it is back.',
  returned: 'Unopened, back',
  lost: 'Lost',
  returnPlace: 'Where the unopened pots go',
  quarantineSuggested: 'Quarantine is suggested: they stood in a garden and may carry its pests.',
  cause: 'Why they are lost',
  returnUnits: (back: number, lost: number) =>
    [back > 0 ? `Bring ${back} back` : '', lost > 0 ? `book ${lost} as lost` : '']
      .filter(Boolean)
      .join(', ')
      .replace(/^./, (letter) => letter.toUpperCase()),
  returnedToast: (back: number, lost: number) =>
    [back > 0 ? `${plants(back)} brought back` : '', lost > 0 ? `${plants(lost)} lost` : ''].filter(Boolean).join(', '),

  causes: {
    'looks-dead': 'looks dead',
    winter: 'winter',
    drought: 'dried out',
    rot: 'rot',
    pests: 'pests',
    animals: 'animals',
    weather: 'weather',
    mishandled: 'damaged in handling',
    discarded: 'thrown away',
    failed: 'did not take',
    unknown: 'not known',
  } satisfies Record<LossCause, string>,
};
