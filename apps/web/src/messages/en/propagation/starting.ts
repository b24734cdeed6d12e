import type { BatchUnit } from '@rootclock/domain';
import { plural } from '../words.ts';
import { plants, unitNames } from './words.ts';

/** Words of the form that starts a batch, beyond its plain fields. */
export const starting = {
  protocol: 'Protocol',
  noProtocol: 'without a protocol',
  protocolHint: (count: number) =>
    plural(count, {
      one: 'There is # for this plant. It fills in the rest.',
      other: 'There are # for this plant. One fills in the rest.',
    }),
  protocolName: (method: string, label: string, version: number) =>
    `${method.replace(/^./, (letter) => letter.toUpperCase())}${label ? `, ${label}` : ''}, version ${version}`,
  stage: 'Begins with',
  stageHint: 'A later stage where what is before it is done, such as seed that was bought stratified.',
  stagesTitle: (ready: string) => `Its stages, ready about ${ready}`,
  packs: 'Seed out of packs',
  packsHint: 'Packs in stratification of this plant and source.',
  noPacks: 'not out of packs',
  packsOf: (code: string, count: string, place: string) => `${code}: ${count} at ${place}`,
  packsUsed: 'Packs used up',
  packsUsedHint: 'None while the packs stay in use.',
  grams: 'Seed taken',
  gramsHint: {
    left: (weight: string) => `${weight} are left of this source; it is taken off.`,
    unknown: 'Nobody weighed this source’s store yet.',
    packs: 'Only noted: the packs’ seed has left the store already.',
  },
  leftAfter: (weight: string) => `${weight} stay in the store.`,
  reckon: 'How many for the plants I want?',
  wanted: 'Plants wanted',
  sure: 'How sure',
  needs: 'Start',
  needsUnits: (count: string, unit: BatchUnit) => `${count} ${unitNames[unit]}`,
  needsSeeds: (count: string) => `${count} seeds`,
  needsTrays: (trays: number, cells: string) =>
    plural(trays, { one: `# tray, ${cells} cells`, other: `# trays, ${cells} cells` }),
  seeds: 'Seeds',
  seedsOf: (count: string, perCell: number) =>
    plural(perCell, { one: `${count}, # to a cell`, other: `${count}, # to a cell` }),
  medium: 'Growing medium',
  mediumOf: (cells: string | null, pots: string | null) =>
    [cells && `${cells} for the cells`, pots && `${pots} for the pots`].filter(Boolean).join(', '),
  mediumHint: 'It is assumed to pack down by 15%.',
  ready: 'Ready',
  potLife: 'Then in the pot',
  potLifeUntil: (on: string) => `until ${on} at the latest`,
  potLifeNone: 'as long as it likes: no rule limits it',
  restsOn: (batches: number) =>
    plural(batches, {
      one: 'What passes rests on # batch of your own and the protocol’s figures.',
      other: 'What passes rests on # batches of your own and the protocol’s figures.',
      zero: 'What passes rests on the protocol’s figures alone.',
    }),
  incomplete: 'Enter how many plants you want and how sure to be (1 to 99%), and the rest is reckoned.',
  never: (share: string) =>
    `By what is known, no number of them gives so many plants in ${share} of cases. Ask for less certainty, or look at the shares of the protocol.`,
  take: 'Take these numbers',
  taken: 'The numbers stand in the form.',
  seedCalculator: 'How much seed, and what will the tray look like?',
  protocolFigure: 'This seed was never tested for germination: the emergence is the protocol’s.',
  fromRecord: (batches: number) =>
    plural(batches, {
      one: 'Filled in from the record: # batch and the protocol.',
      other: 'Filled in from the record: # batches and the protocol.',
      zero: 'Filled in from the protocol: the record has no batch of it yet.',
    }),
  suggests: (cautious: number, usual: number, ready: string) =>
    `The record suggests ${plants(cautious)} cautiously, ${usual} usually, ready ${ready}.`,
  useSuggestion: 'Use what the record suggests',
};
