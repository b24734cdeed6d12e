import type { ErrorSentences } from '../../errors.ts';

export const clients = {
  'client-blanked': () => 'The data of this client were blanked on request. Add a new client instead.',
} satisfies Partial<ErrorSentences>;
