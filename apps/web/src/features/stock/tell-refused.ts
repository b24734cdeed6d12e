/** Says why something behind a button without a form was refused. */
import { readFailure, sentenceOf } from '../../lib/api/index.ts';
import { toast } from '../../ui/feedback/index.ts';

export const tellRefused = (error: unknown): void => toast({ tone: 'problem', text: sentenceOf(readFailure(error)) });
