import type { StartState, UnmetReason } from '@rootclock/domain';
import { grams, plural } from '../words.ts';
import { plants } from '../propagation/words.ts';

const trays = (count: number) => plural(count, { one: '# tray', other: '# trays' });
const cells = (count: number) => plural(count, { one: '# cell', other: '# cells' });
const pieces = (count: number) => plural(count, { one: '# piece', other: '# pieces' });
const seeds = (count: number) => plural(count, { one: '# seed', other: '# seeds' });

export const plan = {
  title: 'What to start',
  covers: (served: number, missing: number) =>
    missing === 0
      ? 'Nothing is missing.'
      : `${plants(missing)} missing; this plan gives ${plural(served, { one: '#', other: '#' })} of them in time.`,
  madeOf: (lines: number, expected: number) =>
    `From ${plural(lines, { one: '# open order line', other: '# open order lines', zero: 'no open orders' })} and ${plural(expected, { one: '# expected need', other: '# expected needs', zero: 'no expected needs' })}, less what stands and is on the way.`,
  confidence: 'How sure each batch should be',
  confidenceOf: (percent: string) => `${percent} sure`,
  usualOf: (percent: string) => `${percent} sure, as usual here`,
  confidenceHint:
    'That a batch gives all it is for. Surer means more units, and an earlier start: below 75% the usual lengths of stages count, from 90% on the long ones.',
  place: 'Place for what you start from here',
  placeHint: 'Stays filled in for the batches after it.',
  weekOf: (day: string) => `Week of ${day}`,
  thisWeek: (day: string) => `This week, from ${day}`,
  batches: (count: number) => plural(count, { one: '# batch', other: '# batches' }),
  states: { coming: 'in time', due: 'start this week', overdue: 'overdue', 'too-late': 'too late' } satisfies Record<
    StartState,
    string
  >,
  startBy: (amount: string, day: string) => `Start ${amount} by ${day}`,
  startOnDay: (amount: string, day: string) => `Start ${amount} on ${day}, when its season opens`,
  mayBeLate: 'may be late',
  startAtOnce: (amount: string) => `Start ${amount} at once`,
  startedToday: (amount: string) => `If you start ${amount} today`,
  startedOn: (amount: string, day: string) => `If you start ${amount} on ${day}, when its season opens`,
  inTrays: (count: number, of: number) => `${trays(count)} (${cells(of)})`,
  inFlats: (count: number, of: number) => `${trays(count)} (${seeds(of)})`,
  inPacks: (count: number, of: number) => `${plural(count, { one: '# pack', other: '# packs' })} for ${cells(of)}`,
  cells,
  pieces,
  trays,
  seeds,
  ready: (count: number, day: string) => `${plants(count)} ready for ${day}`,
  usuallyReady: (day: string) => `usually ready by ${day}`,
  overdueSince: (missed: string) => `The last day to be sure of it was ${missed}.`,
  inTimeUsually: (target: string) => `At its usual pace it is still ready for ${target}.`,
  inTimeQuickly: (target: string) => `It is ready for ${target} only if it goes quickly.`,
  tooLateSince: (missed: string, target: string) => `To be ready for ${target} it had to be started by ${missed}.`,
  firstReady: (surely: string, usually: string) =>
    `Then it is usually ready by ${usually}; to be sure, count on ${surely}.`,
  canGoOut: (day: string) => `The first day to plant it after that is ${day}.`,
  source: 'From',
  seed: 'Seed to take',
  seedOf: (taken: string, left: string) => `${taken} of ${left} left`,
  seedUnweighed: (taken: string) => `${taken}; what is left was never weighed`,
  seedUnknown: (count: number) => `${seeds(count)}; seeds per gram are not known for this source`,
  seedsEach: (count: number) => plural(count, { one: '# seed to a cell', other: '# seeds to a cell' }),
  window: 'Planting window',
  windowFrom: (from: string, to: string) => `${from} to ${to}`,
  medium: 'Growing medium',
  bench: 'Bench space',
  benchOf: (area: string, from: string, to: string) => `up to ${area}, ${from} to ${to}`,
  noBench: 'none',
  target: 'Into',
  gets: 'Gives',
  getsOf: (sure: number, usual: number) => `${plants(sure)} to be sure, ${usual} usually`,
  potLife: 'Pot life then',
  potLifeUntil: (day: string) => `must be planted by ${day}`,
  potLifeNone: 'no limit',
  potLifePasses: (limit: string, wanted: string) =>
    `It would have to be planted by ${limit}, before the last of it is wanted on ${wanted}.`,
  potLater: (day: string) => `Pot it on ${day} or later, or start a second batch later.`,
  emergeLater: (day: string) => `It would have to come up on ${day} or later: start a second batch for the later days.`,
  forWhom: 'For',
  ofOrder: (units: number, order: string, client: string, day: string) => `${units} for ${order}, ${client}, on ${day}`,
  ofExpected: (units: number, day: string, note: string) =>
    `${units} expected from ${day} on${note ? `: ${note}` : ''}`,
  served: (units: number, of: number) => `${units} of ${of}`,
  restsOn: 'What this rests on',
  passes: (percent: string) => `${percent} of what is started gets ready`,
  passesStage: (stage: string, percent: string, tried: number, batches: number) =>
    tried === 0
      ? `${stage}: ${percent}, the protocol’s figure; nothing counted yet`
      : `${stage}: ${percent}, from ${tried} counted in ${plural(batches, { one: '# batch', other: '# batches' })} and the protocol’s figure`,
  begins: (stage: string, day: string) => `${stage} from ${day}`,
  readyOn: (day: string) => `Ready by ${day}`,
  protocol: 'Protocol',
  start: 'Start this batch',
  startOf: (what: string) => `Start this batch: ${what}`,
  startNow: (place: string) => `Start it now at ${place}`,
  startNowOf: (what: string, place: string) => `Start it now at ${place}: ${what}`,
  choosePlace: 'Choose a place above to start it with one tap.',
  started: (code: string) => `${code} was started.`,
  tooLate: 'Too late for their day',
  tooLateLead:
    'Nothing is planned for these: no batch started today would be ready. They can still be started for a later day.',
  gaps: 'Not in the plan',
  gapsLead: 'What is missing and no batch is planned for, with the reason.',
  gapExpected: (day: string, note: string) => `expected from ${day} on${note ? `: ${note}` : ''}`,
  gapOrder: (order: string, client: string, day: string) => `${order}, ${client}, on ${day}`,
  chartTop: (most: string) => `Top of the chart: ${most}`,
  gapOf: (units: number, day: string) => `${plants(units)} for ${day}`,
  reasons: {
    'no-protocol': 'No protocol says how this plant is raised.',
    'nothing-passes': 'By its protocol hardly anything gets ready.',
    'no-source': 'No source fits: none of the method’s kind, or none of the zone or origin that the order asks for.',
    'seed-not-fresh': 'Its seed has to be sown fresh, and what is stored is too old. Gather it in its season.',
    'not-enough-seed': 'The seed does not suffice.',
    'no-space': 'The benches are full.',
    'too-far-ahead': 'This is more than ten years ahead. Choose an earlier day.',
  } satisfies Record<UnmetReason, string>,
  seedShort: (needed: number, left: number) => `All of it takes ${grams(needed)}; ${grams(left)} are left.`,
  fullWeeks: (from: string, to: string, count: number) =>
    plural(count, {
      one: `No room for it in the week of ${from}.`,
      other: `No room for it in # weeks between ${from} and ${to}.`,
    }),
  writeProtocol: 'Write a protocol',
  seeProtocols: 'See its protocols',
  addSource: 'Go to sources',
  measurePlaces: 'Go to places',
  benchTitle: 'Bench space by week',
  benchNote: (peak: string, week: string, capacity: string) =>
    `Fullest in the week of ${week}: ${peak} of ${capacity}.`,
  benchUnknown:
    'Nobody has measured a bench yet, so nothing was left out for want of space. Enter the area of a place to plan within it.',
  benchPeak: (peak: string, week: string) => `Fullest in the week of ${week}: ${peak}.`,
  benchLegend: { standing: 'stands or is on the way', planned: 'this plan', capacity: 'what there is' },
  benchTable: 'The same as a table',
  week: 'Week from',
  standing: 'Stands',
  planned: 'Planned',
  together: 'Together',
  free: 'Free',
  within: (percent: string) =>
    `So many choices are weighed here that the plan was not proved to be the very best; no other serves more than ${percent} more.`,
  emptyTitle: 'Nothing is missing',
  emptyText: 'What stands and is on the way covers all orders and all that is expected.',
  nothingWantedTitle: 'Nothing is wanted yet',
  nothingWantedText: 'Enter what you expect to need next season, or take orders: the plan says what to start for them.',
  allElsewhereTitle: 'No batch can be planned',
  allElsewhereText: 'Below stands what is missing and why.',
  neutral: (value: string) =>
    `Plants of which nobody said what they are worth count as ${value} each where space runs out; orders go before all that is only expected.`,
};
