import type { ErrorSentences } from '../../errors.ts';

const SUPPLY_REASONS: Record<string, string> = {
  item: 'another plant or container', 'not-ready': 'not ready by then', 'past-plant-by': 'past its plant-by day by then', held: 'on hold', 'seed-zone': 'from another seed zone',
  'not-wild-type': 'not of wild type', treated: 'treated', 'released-by-hand': 'released from this line',
};

export const promises = {
  'would-shorten': ({ lines, ownerOnly }) =>
    `This would leave others short: ${lines.map((line) => `${line.orderCode} ${line.scientificName} by ${line.shorterBy}`).join(', ')}. ${ownerOnly ? 'Only an owner can decide that.' : 'Send it again if that is what you want.'}`,
  'does-not-serve': ({ supply, reasons }) => `${supply} cannot serve this line: ${reasons.map((reason) => SUPPLY_REASONS[reason] ?? reason).join(', ')}.`,
  'nothing-reserved': ({ supply }) => `Nothing of ${supply} is held for this line.`,
  'pinned-by-others': ({ supply, available }) => (available === 0 ? `All of ${supply} is tied to other lines. Untie some first.` : `Enter ${available} or fewer: the rest of ${supply} is tied to other lines.`),
  'more-than-line-needs': ({ open }) => (open === 0 ? 'This line has all its plants already.' : `Enter ${open} or fewer: the line needs no more.`),
} satisfies Partial<ErrorSentences>;
