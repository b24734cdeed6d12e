import type { BatchUnit, PotLifeBasis, Season } from '@rootclock/domain';
import { plural } from './words.ts';

const batches = (count: number): string => plural(count, { one: '# batch', other: '# batches' });
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
const days = (count: number): string => plural(count, { one: '# day', other: '# days' });
const tried = (passed: string, of: string, what: 'seeds' | BatchUnit | 'plants'): string => {
  const names = { seeds: 'seeds', cell: 'cells', piece: 'pieces', tray: 'seeds', pack: 'seeds', plants: 'plants' };
  return `${passed} of ${of} ${names[what]}`;
};

export const record = {
  title: 'Record',
  lead: 'What came through each stage in this nursery, beside what the protocol says, and how many it rests on.',
  search: 'Plant',
  show: 'Show',
  showAll: 'Protocols too',
  showCounted: 'What was counted',
  caption: 'Shares that pass, by plant and method',
  plant: 'Plant',
  method: 'Method',
  cameUp: 'Came up or rooted',
  prickedOut: 'Pricked out',
  grownOn: 'Grown on',
  inAll: 'In all',
  usual: 'usual protocol',
  noProtocol: 'no protocol of this name',
  counts: (passed: string, of: string, what: 'seeds' | BatchUnit | 'plants', inBatches: number) =>
    `${tried(passed, of, what)} in ${batches(inBatches)}`,
  interval: (low: string, high: string) => `counts alone: ${low} to ${high}`,
  prior: (share: string) => `protocol ${share}`,
  priorAlone: 'no finished batch yet: the protocol’s figure alone',
  notInProtocol: 'no such stage in its protocol',
  notCounted: 'not counted',
  open: (plant: string) => `${plant}: all that was learned`,
  emptyTitle: 'Nothing to learn from yet',
  emptyText: 'Write a protocol, or finish a batch: from then on its counts stand here.',
  noneTitle: 'No plant matches',
  noneText: 'Search for a part of a name, or show all of them.',
  inAllHint: (low: string, high: string) => `most likely ${low} to ${high}`,
  bar: (share: string, low: string, high: string, prior: string) =>
    `Believed ${share}; counts alone ${low} to ${high}; protocol ${prior}`,
  barAlone: (prior: string) => `Protocol ${prior}, nothing counted`,
  barCounts: (share: string, low: string, high: string) => `Counted ${share}, ${low} to ${high}`,

  weigh: 'How counts are weighed',
  weighLead:
    'A protocol’s figure counts as so many plants; what was counted is added to it. With more counts the nursery’s own record speaks louder.',
  priorWeight: 'A protocol’s figure counts as',
  priorWeightHint: 'Plants. A small number lets a few batches change the figure soon.',
  evidenceLimit: 'Counts weigh at most as',
  evidenceLimitHint: 'Plants. Batches differ more than their counts alone would say, so no share is surer than this.',
  planConfidence: 'How sure plans should be',
  planConfidenceHint: 'Per cent, 50 to 99.9. A surer plan starts more.',
  winterSurvival: 'Live through winter before any count',
  winterSurvivalHint: 'Per cent of plants in pots.',
  plantsUnit: 'plants',
  percent: '%',
  preview: 'What this changes',
  previewNone: 'No share changes by half a per cent or more.',
  previewShares: (count: number) =>
    plural(count, {
      one: '# share changes by half a per cent or more',
      other: '# shares change by half a per cent or more',
    }),
  previewLine: (what: string, before: string, after: string) => `${what}: ${before} → ${after}`,
  previewStart: (plant: string, before: string, after: string) => `To get 50 of ${plant}: start ${before} → ${after}`,
  cannot: 'no number is enough',
  save: 'Save',
  saved: 'Counts are weighed anew. What batches may promise stays as it is noted.',
  ownerOnly: 'An owner of the nursery can change this.',
  weights: (weight: string, limit: string, confidence: string) =>
    `A protocol’s figure counts as ${weight} plants, counts as ${limit} at most; plans are ${confidence} sure.`,

  shares: 'What comes through',
  sharesOf: (method: string, label: string) => (label ? `${capital(method)}: ${label}` : capital(method)),
  legend:
    'Filled: what is believed. Line with ends: what the counts alone allow, 95 times in a hundred. Stroke: the protocol.',
  stage: 'Stage',
  believed: 'Believed',
  countsColumn: 'Counted',
  protocolColumn: 'Protocol',
  range: (low: string, high: string) => `${low} to ${high}`,
  over: (count: number) =>
    `${plural(count, { one: '# plant more was', other: '# plants more were' })} potted than came up; they are no passes.`,
  covers: (stages: string) => `with ${stages}`,
  toProtocol: 'The protocol',
  timeOf: (method: string, what: string) => `${capital(method)}: ${what}`,
  hereTitle: 'Nothing learned yet',
  hereText: 'There is neither a protocol nor a finished batch of this plant.',

  times: 'How long it takes',
  timesLead:
    'From the start of a batch. Batches under way count for as long as they have been watched; a batch of which nothing was potted is left out.',
  timesChart: (rows: number) =>
    plural(rows, {
      one: 'Chart of # time: a line from the tenth to the ninetieth percentile, a mark at the median',
      other: 'Chart of # times: lines from the tenth to the ninetieth percentile, marks at the medians',
    }),
  toPotting: 'to the first potting',
  toReady: 'to the first root ball that holds',
  what: 'What',
  tenth: 'A tenth by',
  median: 'Half by',
  ninetieth: 'Nine tenths by',
  restsOn: 'Rests on',
  rests: (count: number, unfinished: number) => `${batches(count)}${unfinished > 0 ? `, ${unfinished} under way` : ''}`,
  notYet: 'not yet',
  days,
  noTimes: 'No batch of this plant has been started yet.',
  daysFromStart: 'Days from the start',

  losses: 'Losses in pots by season',
  lossesLead:
    'Plants lost or missed by a count, over the days they stood; what was discarded is no loss, and those set aside for orders count as standing. What winter took counts to winter, though it is found out in spring.',
  season: 'Season',
  seasons: { spring: 'Spring', summer: 'Summer', autumn: 'Autumn', winter: 'Winter' } satisfies Record<Season, string>,
  lost: 'Lost',
  plantDays: 'Plant-days',
  per: 'Lost of 1,000 in a month',
  noExposure: 'nothing stood',
  winterLine: (share: string) => `Of plants in pots, ${share} are expected to live through a winter.`,
  winterRests: (lived: number, stood: number, lots: number) =>
    `${lived} of ${stood} plants in ${plural(lots, { one: '# lot', other: '# lots' })} lived, by the spring counts.`,
  winterAlone: 'No spring count yet: the nursery’s own figure alone.',

  survival: 'Life in the pot',
  survivalLead:
    'The share still alive, by days in the pot. Plants that were sold, planted, potted up, discarded or still stand count for as long as they were seen alive; what a count missed is not taken for dead.',
  survivalIn: (container: string) => `In ${container}`,
  survivalChart: (container: string, plants: number, died: number) =>
    `Curve of survival in ${container}: ${died} of ${plants} died`,
  survivalRests: (plants: string, died: string, last: number) =>
    `Rests on ${plants} plants, of which ${died} died; the last were seen after ${days(last)}.`,
  medianDays: (count: number) => `Half had died after ${days(count)}.`,
  noMedian: 'More than half were alive as long as they were watched.',
  noDeaths: 'None of them died as long as they were watched.',
  limit: (span: string, basis: PotLifeBasis, count: number) =>
    `Limit ${span} ${({ confined: 'since roots were confined', container: 'in the container', 'no-winter': 'before winter' } satisfies Record<PotLifeBasis, string>)[basis]}: day ${count}`,
  limitAt: (share: string) => `${share} were alive at the limit.`,
  limitBeyond: 'Nobody watched plants for that long yet.',
  limitMark: 'Limit',
  noSurvival: 'No plant of this kind stood in a pot whose day is recorded.',
  daysInPot: 'Days in the pot',
  day: 'Day',
  atRisk: 'Watched',
  died: 'Died',
  alive: 'Alive',
  band: 'Within',
  allSteps: (count: number) => plural(count, { one: '# day with deaths', other: '# days with deaths' }),
};
