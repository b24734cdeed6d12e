import { readFailure, sentenceOf } from '../../lib/api/index.ts';
import { toast } from '../../ui/feedback/index.ts';

/** Says why something that was tapped, without a form to show it in, was refused. */
export const useFailure =
  () =>
  (error: unknown): void =>
    toast({ text: sentenceOf(readFailure(error)), tone: 'problem' });
