import type { ErrorSentences } from '../../errors.ts';
import { grams, percent, plural } from '../words.ts';

export const sources = {
  'source-of-other-plant': ({ source, plant }) =>
    `${source} is not a source of ${plant}. Choose one of its own, or correct the plant.`,
  'source-retired': ({ source }) => `${source} is retired. Bring it back on its page, or choose another.`,
  'source-in-itself': ({ lot }) => `${lot} came from this very source and cannot be its mother. Choose an older lot.`,
  'mother-lot-missing': () => 'Say which lot the mother plants are.',
  'more-seed-than-stored': ({ source, left }) => `Enter ${grams(left)} or less: ${grams(left)} of ${source} are left.`,
  'no-seed-stored': ({ source }) =>
    `No seed of ${source} is in the store. Put seed in or weigh it on the source’s page first, or leave the weight out.`,
  'source-holds-no-seed': ({ source }) =>
    `${source} gives cuttings or divisions, which are not weighed. Choose a source of seed.`,
  'source-has-seed': ({ source, left }) =>
    `${grams(left)} of seed of ${source} are in the store. Take them out first, or keep a kind that has seed.`,
  'cleaned-over-raw': ({ raw, cleaned }) =>
    `${grams(cleaned)} of cleaned seed cannot come from ${grams(raw)} raw. Enter ${grams(raw)} or less.`,
  'blend-of-different-plants': ({ source, plant, wanted }) =>
    `${source} is ${plant}, the blend is of ${wanted}. Choose sources of one plant.`,
  'blend-needs-parts': ({ parts }) =>
    parts === 0
      ? 'Enter the weight of two parts or more.'
      : 'Enter the weight of one more part at least: a blend has two or more.',
  'blend-part-twice': ({ source }) => `${source} is in the blend twice. Enter its weight once.`,
  'blend-in-use': ({ source, batches }) =>
    `${plural(batches, { one: '# batch was', other: '# batches were' })} started from ${source}. Take those back first.`,
  'replicate-over-seeds': ({ sound, seeds }) => `${sound} of ${seeds} seeds cannot be. Enter ${seeds} or fewer.`,
  'shares-over-whole': ({ germinated, hard, dormant }) =>
    `${percent(germinated)} sound, ${percent(hard)} hard and ${percent(dormant)} dormant make ${percent(germinated + hard + dormant)}. Together they can be 100% at most: enter ${percent(Math.max(0, 1 - germinated))} or less for hard and dormant seed.`,
  'test-already-withdrawn': () => 'This test has been withdrawn already.',
  'seed-of-entry': ({ grams: used }) =>
    `These ${grams(used)} were used by an entry of a batch. Reverse that entry: the seed comes back with it.`,
  'seed-has-gone': ({ source, grams: came, left }) =>
    `Of these ${grams(came)} only ${grams(left)} are still in the store of ${source}. Take back first what took seed out since.`,
} satisfies Partial<ErrorSentences>;
