import type { ErrorSentences } from '../../errors.ts';
import { days } from '../words.ts';

const unfit = {
  'not-accepted': 'another plant or container',
  held: 'on hold or in quarantine',
  'provenance-zone': 'from another seed zone',
  'provenance-unknown': 'of an unknown seed zone',
  'not-wild-type': 'not of wild type',
  'wild-type-unknown': 'not known to be of wild type',
  treated: 'treated',
  'treatment-unknown': 'not known to be untreated',
  'not-native': 'not known to be native there',
  'not-ready': 'not ready by then',
  'past-plant-by': 'past its plant-by day by then',
  'released-by-hand': 'released from this line',
};

export const promises = {
  'would-shorten': ({ lines }) =>
    `This would leave fewer plants for: ${lines.map((line) => `${line.orderCode} ${line.scientificName} by ${line.shorterBy}`).join(', ')}. Send it again if that is what you want.`,
  'does-not-serve': ({ supply, reasons }) =>
    `${supply} cannot serve this line: ${reasons.map((reason) => unfit[reason]).join(', ')}.`,
  'too-many-lines-share': ({ lines, plants }) =>
    `Not saved. ${lines} order lines now share ${plants} plants, too many to plan at once. Name fewer alternatives, or finish old orders first.`,
  'promises-moved': () =>
    'Not saved yet. Promises that share these plants are still being worked out. Send it again in a moment.',
  'nothing-reserved': ({ supply }) => `Nothing of ${supply} is held for this line.`,
  'pinned-by-others': ({ supply, available }) =>
    available === 0
      ? `All of ${supply} is tied to other lines. Untie some first.`
      : `Enter ${available} or fewer: the rest of ${supply} is tied to other lines.`,
  'more-than-line-needs': ({ open }) =>
    open === 0 ? 'This line has all its plants already.' : `Enter ${open} or fewer: the line needs no more.`,
  'loss-is-settled': ({ order, how, on }) =>
    how === 'whole'
      ? `The line of ${order} has had all its plants again since ${days.long(on)}. There is nothing to set aside.`
      : `This loss of ${order} was set aside on ${days.long(on)} already. Read the page again.`,
  'below-what-happened': ({ least, staged, delivered }) =>
    `Enter ${least} or more: ${staged} are pulled and ${delivered} are planted or handed over already.`,
} satisfies Partial<ErrorSentences>;
