import type { ErrorSentences } from '../../errors.ts';

export const clients = {
  'client-blanked': () => 'Los datos de este cliente se borraron a petición. Agregue un cliente nuevo.',
} satisfies Partial<ErrorSentences>;
