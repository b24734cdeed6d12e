/** Says why something behind a button without a form was refused. */
import { TRPCClientError } from '@trpc/client';
import { toast } from '../ui/feedback/index.ts';
import { CommandError, readFailure, sentenceOf } from './api/index.ts';

export function tellRefused(error: unknown): void {
  // A mistake of the app's own is no answer of the server's.
  if (!(error instanceof CommandError || error instanceof TRPCClientError)) throw error;
  toast({ tone: 'problem', text: sentenceOf(readFailure(error)) });
}
