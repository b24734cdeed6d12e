import * as z from 'zod/mini';
import type { InputIssue } from './errors/index.ts';

/** What zod says of one failure, as far as it matters here. */
interface RawIssue {
  code: string;
  path: PropertyKey[];
  expected?: string;
  input?: unknown;
  origin?: string;
  minimum?: number | bigint;
  maximum?: number | bigint;
  params?: { problem?: InputIssue['problem']; least?: number; most?: number };
}

export type ReadInput<Data> = { ok: true; data: Data } | { ok: false; issues: InputIssue[] };

/**
 * Reads an input by its schema, or says what is wrong in terms that screens have sentences for. Server and browser both use it, so
 * that a form which checks itself before sending says the same as the server would. `prefix` stands before each path.
 */
export function readInput<Schema extends z.ZodMiniType>(
  schema: Schema,
  raw: unknown,
  prefix = '',
): ReadInput<z.output<Schema>> {
  // Without reportInput a wrong value could not be told from a missing one.
  const result = z.safeParse(schema, raw, { reportInput: true });
  if (result.success) return { ok: true, data: result.data };
  return { ok: false, issues: result.error.issues.map((issue) => toIssue(issue as RawIssue, prefix)) };
}

function toIssue(issue: RawIssue, prefix: string): InputIssue {
  const path = [prefix, ...issue.path.map(String)].filter(Boolean).join('.');
  const [least, most] = [issue.minimum ?? issue.params?.least, issue.maximum ?? issue.params?.most];
  const bounds = {
    ...(least === undefined ? {} : { least: Number(least) }),
    ...(most === undefined ? {} : { most: Number(most) }),
  };
  return { path, problem: problemOf(issue), ...bounds };
}

function problemOf(issue: RawIssue): InputIssue['problem'] {
  if (issue.input === undefined || issue.input === null || issue.input === '') return 'required';
  if (issue.params?.problem) return issue.params.problem;
  const isText = issue.origin === 'string' || issue.origin === 'array';
  switch (issue.code) {
    case 'invalid_type':
      if (issue.expected === 'number' || issue.expected === 'int')
        return typeof issue.input === 'number' && !Number.isNaN(issue.input) ? 'not-whole' : 'not-a-number';
      return 'wrong-form';
    case 'too_small':
      return isText ? (Number(issue.minimum) === 1 ? 'required' : 'too-short') : 'too-small';
    case 'too_big':
      return isText ? 'too-long' : 'too-big';
    case 'invalid_value':
      return 'not-a-choice';
    case 'unrecognized_keys':
      return 'unknown-field';
    default:
      return 'wrong-form';
  }
}
