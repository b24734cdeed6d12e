import { days, plural } from '../words.ts';

const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });

/** The list that a crew walks with, on the phone or on paper. */
export const pull = {
  title: (code: string) => `Pull list ${code}`,
  toPullTitle: 'To pull',
  toPullLead: 'Open orders due within two weeks, overdue ones first.',
  nothingToPull: 'Nothing to pull',
  nothingToPullText: 'No open order is due within two weeks.',
  toPullCaption: (count: number) => plural(count, { one: '# order', other: '# orders' }),
  toPull: (count: number) => plural(count, { zero: 'nothing to pull', one: '# to pull', other: '# to pull' }),
  for: (client: string, site: string | null) => (site ? `${client}, ${site}` : client),
  issue: 'Issue the list',
  issueAgain: 'Issue it again',
  issued: 'The list is issued: its plants are tied to this order.',
  issuedOn: (on: string) => `Issued on ${days.long(on)}.`,
  notIssued: 'Not issued yet: what it names may still change. Issuing ties these plants to the order.',
  print: 'Print',
  pulledOn: 'Pulled on',
  atPlace: (count: number) => `${plants(count)} here`,
  pullAll: (place: string, count: number) => `Pull all ${count} at ${place}`,
  pullUnits: (count: number) => `Pull ${count}`,
  pullRow: (count: number, lot: string) => `Pull ${count} of ${lot}`,
  unitsToPull: (lot: string) => `Plants of ${lot} to pull`,
  pulled: (count: number, code: string) => `${plants(count)} pulled for ${code}.`,
  checked: 'Root ball checked',
  notChecked: 'Root ball not checked',
  notCheckedTitle: 'Root ball not checked',
  notCheckedText: (lots: readonly string[]) =>
    `Nobody has looked at the root balls of ${lots.join(', ')}. Knock one out: roots that do not hold the soil are lost at planting.`,
  itHolds: 'I looked: pull them',
  leaveThem: 'Leave them',
  seeCautions: 'Poisonous or harmful: read its cautions below.',
  held: 'On hold',
  closed: (until: string, reason: string | null) =>
    `Closed until ${until}${reason ? `: ${reason}` : ''}. Nobody goes in before.`,
  forBed: (bed: string) => `for ${bed}`,
  nothingHere: 'Nothing to pull',
  nothingHereText: 'No plants of lots are reserved for this order, or all of them are pulled.',
  allPulled: 'Everything reserved is pulled',
  allPulledText: 'What was pulled waits in staging for this order.',
  notPottedTitle: 'Not potted yet',
  notPotted: (plant: string, units: number, batch: string, ready: string | null) =>
    `${plant}: ${plants(units)} still grow in ${batch}${ready ? `, expected on ${days.long(ready)}` : ''}.`,
  shortTitle: 'Short',
  short: (plant: string, container: string, units: number) => `${plant} in ${container}: ${units} short`,
  stagedTitle: 'Pulled and waiting',
  staged: (plant: string, container: string, units: number, lot: string) =>
    `${plant} in ${container}: ${units} of ${lot}`,
  careTitle: 'What to know of these plants',
  workTitle: 'Before you dig and plant',
  digging: 'Have buried lines and pipes located before any digging, wait for the marks, and keep away from them.',
  deferring:
    'These cautions are reminders, no advice on treatment. The product’s label is the law where pesticides are used; local codes, the site’s own rules and licensed practice come before anything written here.',
  poisonous:
    'If somebody has eaten of a plant or it has touched eyes or skin, call the poison centre or a doctor; for animals, a veterinarian.',
};
