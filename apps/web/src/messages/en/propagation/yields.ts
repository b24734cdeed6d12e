import { plural } from '../words.ts';
import { plants } from './words.ts';

/** What a batch may yield: what is stored, and what the record suggests. */
export const yields = {
  title: 'What it may yield',
  stored: 'Noted for this batch',
  cautious: 'Cautious (may be promised)',
  usual: 'Usual',
  ready: 'Ready',
  notSaid: 'nobody has said',
  suggested: 'What the record suggests now',
  suggestion: (cautious: number, usual: number) => `${plants(cautious)} cautiously, ${plants(usual)} usually`,
  suggestedReady: (on: string, late: string) =>
    on === late ? `ready ${on}` : `ready ${on}, ${late} by the long durations`,
  onlyReady: (on: string, late: string) =>
    `By its stages it is ready ${on}, ${late} by the long durations. How many there will be follows once seeds or plants are counted.`,
  from: {
    units: (count: string) => `Reckoned from the ${count} that stand.`,
    seeds: (count: string) => `Reckoned from ${count} seeds.`,
    count: (count: string) => `Reckoned from the ${count} alive by the last count.`,
  },
  confidence: (share: string) => `The cautious number holds in ${share} of cases.`,
  takeOver: 'Take it over',
  taken: (cautious: number, usual: number) => `Noted: ${plants(cautious)} cautiously, ${plants(usual)} usually.`,
  asStored: 'It is what is noted already.',
  stage: 'Stage ahead',
  passes: 'Passes',
  restsOn: 'Rests on',
  counts: (passed: string, tried: string, batches: number) =>
    `${passed} of ${tried}, ${plural(batches, { one: '# batch', other: '# batches' })}`,
  figureOnly: 'the protocol’s figure alone',
  withFigure: (share: string) => `the protocol says ${share}`,
  offered: 'It is only offered: nothing changes until somebody takes it over.',
};
