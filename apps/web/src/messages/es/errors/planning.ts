import type { ErrorSentences } from '../../errors.ts';

export const planning = {
  'task-ends-by-entry': ({ of }) => `Esto no se marca: queda hecho cuando se anota en ${of}. Ábralo y anote lo que se hizo.`,
} satisfies Partial<ErrorSentences>;
