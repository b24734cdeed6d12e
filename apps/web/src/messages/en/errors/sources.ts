import type { ErrorSentences } from '../../errors.ts';

export const sources = {
  'source-of-other-plant': ({ source, plant }) => `${source} is not a source of ${plant}. Choose one of its own, or correct the plant.`,
  'source-retired': ({ source }) => `${source} is retired. Bring it back on its page, or choose another.`,
  'source-in-itself': ({ lot }) => `${lot} came from this very source and cannot be its mother. Choose an older lot.`,
  'mother-lot-missing': () => 'Say which lot the mother plants are.',
} satisfies Partial<ErrorSentences>;
