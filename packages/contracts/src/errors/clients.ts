import { errorKind } from './kind.ts';

export const clientsErrors = {
  'client-blanked': errorKind('refusal', 409),
} as const;
