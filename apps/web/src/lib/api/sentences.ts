/** A failure as sentences: one for the whole, or one beside each field. */
import { messages } from '../../messages/index.ts';
import { issuesIn, type Failure } from './failure.ts';

/** The sentence for the whole of a failure, with its numbers and the way out. */
export function sentenceOf(failure: Failure): string {
  const { errors, outbox } = messages();
  if (failure.code === 'no-answer') return outbox.noAnswer;
  if (failure.code === 'fault') return outbox.fault(failure.requestId ?? null);
  // Each sentence takes the data of its own code; the table of the contracts is what pairs them.
  const say = errors[failure.code] as (data: never) => string;
  return say((failure.data ?? {}) as never);
}

/** Sentences by field. A failure that belongs to no field answers none: then `sentenceOf` says it. */
export function fieldSentences(failure: Failure): Record<string, string> {
  const issues = issuesIn(failure);
  if (issues.length > 0) {
    const { issues: sayIssue } = messages();
    // The first thing wrong with a field is enough; the rest usually follows from it.
    return Object.fromEntries(
      issues
        .filter((issue) => issue.path !== '')
        .toReversed()
        .map((issue) => [issue.path, sayIssue[issue.problem](issue)]),
    );
  }
  return failure.field ? { [failure.field]: sentenceOf(failure) } : {};
}
