import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

const METHODS: Record<string, string> = {
  seed: 'seed',
  cutting: 'cuttings',
  'root-cutting': 'root cuttings',
  division: 'divisions',
};
const CONTAINERS: Record<string, string> = {
  tray: 'a plug tray',
  pot: 'pots',
  flat: 'an open flat',
  none: 'no container',
};
const UNITS: Record<string, string> = { cell: 'cells', tray: 'trays', piece: 'pieces', pack: 'packs' };
const STAGES: Record<string, string> = {
  scarification: 'scarification',
  stratification: 'the cold and moist time',
  sowing: 'sowing',
  sticking: 'sticking',
  emergence: 'coming up',
  rooting: 'rooting',
  'pricking-out': 'pricking out',
  'growing-on': 'growing on',
  hardening: 'hardening',
  'root-check': 'the root-ball check',
  ready: 'ready',
};
const PACES: Record<string, string> = { short: 'short', usual: 'usual', long: 'long' };
const unitsOf = (count: number, unit: string): string => {
  const forms = {
    cell: { one: '# cell', other: '# cells' },
    tray: { one: '# tray', other: '# trays' },
    piece: { one: '# piece', other: '# pieces' },
    pack: { one: '# pack', other: '# packs' },
  };
  return plural(count, forms[unit as keyof typeof forms] ?? { one: '# unit', other: '# units' });
};
const capital = (sentence: string): string => sentence.replace(/^./, (letter) => letter.toUpperCase());
const listed = (words: readonly string[], names: Record<string, string>): string =>
  words.map((word) => names[word] ?? word).join(' or ');

export const propagation = {
  'batch-closed': ({ batch, closedOn }) =>
    `${batch} was closed on ${days.long(closedOn)}. Undo its last entry to open it again.`,
  'unit-not-for-method': ({ method, fits }) =>
    `A batch of ${METHODS[method] ?? method} is counted in ${listed(fits, UNITS)}.`,
  'container-not-for-unit': ({ unit, fits }) =>
    `${UNITS[unit] ?? unit} stand in ${listed(fits, CONTAINERS)}. Choose one of these.`.replace(/^./, (letter) =>
      letter.toUpperCase(),
    ),
  'tray-without-cells': ({ container }) =>
    container === 'none'
      ? 'Choose the tray first.'
      : `Nobody has said how many cells ${container} has. Enter the cells themselves, or set the number on the container.`,
  'more-emerged-than-units': ({ standing, unit }) =>
    `Enter ${standing} or fewer: ${unitsOf(standing, unit)} stand there. Count ${unit === 'cell' ? 'cells with plants, not plants' : 'what lives'}; if more stand there, correct their number first.`,
  'first-alive-unknown': ({ startedOn }) =>
    `Say when the first came up or rooted, since their pot life runs from that day. A month or a season after ${days.long(startedOn)} is enough.`,
  'units-must-leave': ({ unit }) => `Enter how many ${UNITS[unit] ?? unit} were emptied: 1 or more.`,
  'lot-not-of-batch': ({ lot, batch }) =>
    `${lot} was not potted from ${batch} into this container. Make a new lot instead.`,
  'potting-is-over': ({ lot, lastOn }) =>
    `${lot} could be added to until ${days.long(lastOn)}. Make a new lot instead.`,
  'cautious-over-units': ({ standing, unit }) => `Enter ${standing} or fewer: ${unitsOf(standing, unit)} stand there.`,
  'usual-over-units': ({ standing, unit }) => `Enter ${standing} or fewer: ${unitsOf(standing, unit)} stand there.`,
  'usual-below-cautious': ({ cautious }) =>
    `Enter ${cautious} or more: that is the cautious number, and usually there are at least as many.`,
  'protocol-of-other-plant': ({ protocolPlant, plant }) =>
    `That protocol is for ${protocolPlant}. Choose one for ${plant}, or none.`,
  'protocol-of-other-method': ({ protocolMethod, method }) =>
    `That protocol is for ${METHODS[protocolMethod] ?? protocolMethod}. Choose one for ${METHODS[method] ?? method}, or none.`,
  'batch-without-protocol': ({ batch }) => `${batch} was started without a protocol, so it has no stages.`,
  'stage-not-in-protocol': ({ stages }) =>
    `The protocol has these stages only: ${stages.map((stage) => STAGES[stage] ?? stage).join(', ')}. Choose one of them.`,
  'stage-before-earlier': ({ stage, earlier, earlierOn }) =>
    capital(
      `${STAGES[stage] ?? stage} comes after ${STAGES[earlier] ?? earlier}, which began on ${days.long(earlierOn)}. Enter that day or a later one.`,
    ),
  'stage-after-later': ({ stage, later, laterOn }) =>
    capital(
      `${STAGES[stage] ?? stage} comes before ${STAGES[later] ?? later}, which began on ${days.long(laterOn)}. Enter that day or an earlier one.`,
    ),
  'not-packs': ({ batch, unit }) =>
    `${batch} is counted in ${UNITS[unit] ?? unit}. Only seed in packs can be drawn on: choose a batch of packs.`,
  'packs-of-other-plant': ({ batch, plant }) => `The packs of ${batch} hold ${plant}. Choose packs of the same plant.`,
  'packs-of-other-source': ({ batch, source }) =>
    `The packs of ${batch} hold seed of ${source}. Choose that source, or other packs.`,
  'units-left': ({ left, unit }) =>
    `${unitsOf(left, unit)} still stand there. Say why they are written off, or keep the batch open.`,
  'batch-already-there': ({ batch, place }) =>
    `All of ${batch} that you chose stands at ${place} already. Choose another place.`,
  'nothing-left': ({ batch }) => `Nothing of ${batch} is left to pot from.`,
  'protocol-exists': ({ plant, method, label, isRetired }) =>
    `${plant} has a protocol for ${METHODS[method] ?? method}${label ? ` named “${label}”` : ''} already. ${isRetired ? 'It is retired: take it back, or name the treatment that this one tries.' : 'Revise that one, or name the treatment that this one tries.'}`,
  'protocol-retired': ({ plant, method }) =>
    `The protocol of ${plant} for ${METHODS[method] ?? method} is retired. Take it back into use first.`,
  'protocol-moved-on': ({ number, madeOn }) =>
    `Version ${number} was written on ${days.long(madeOn)}, after you opened this. Nothing was saved: open the newest version and make your change there.`,
  'protocol-unchanged': ({ number }) =>
    `This says the same as version ${number}. Change something first, or leave it as it is.`,
  'stage-out-of-order': ({ stage, before }) =>
    `${STAGES[stage] ?? stage} comes before ${STAGES[before] ?? before}. Move it up.`.replace(/^./, (letter) =>
      letter.toUpperCase(),
    ),
  'stage-twice': ({ stage }) =>
    `${STAGES[stage] ?? stage} is there twice. Take one of them out.`.replace(/^./, (letter) => letter.toUpperCase()),
  'stage-not-for-method': ({ stage, method }) =>
    `${STAGES[stage] ?? stage} is no stage of ${METHODS[method] ?? method}. Take it out.`.replace(/^./, (letter) =>
      letter.toUpperCase(),
    ),
  'duration-out-of-order': ({ than, least }) =>
    plural(least, {
      one: `Enter # day or more: the ${PACES[than] ?? than} length is # day.`,
      other: `Enter # days or more: the ${PACES[than] ?? than} length is # days.`,
    }),
  'temperature-out-of-order': ({ low }) =>
    `Enter ${low} °C (${Math.round(low * 1.8 + 32)} °F) or more: that is the lowest.`,
  'seeds-for-seed-only': ({ method }) =>
    `Seeds belong to protocols from seed. Leave this empty for ${METHODS[method] ?? method}.`,
  'seeds-need-cells': ({ unit }) =>
    `Only cells have a number of seeds each. Leave this empty for ${UNITS[unit] ?? unit}, or count the batch in cells.`,
} satisfies Partial<ErrorSentences>;
