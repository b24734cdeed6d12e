// Every procedure by its path, asked as every role or as nobody, with whatever comes back told as data.
import type { ErrorAnswer } from '@rootclock/contracts';
import type { Role } from '@rootclock/domain';
import { operations } from '../../apps/server/src/features/operations.ts';
import { sessionProcedures } from '../../apps/server/src/features/people/session-router.ts';
import { appRouter } from '../../apps/server/src/router.ts';
import { errorAnswer } from '../../apps/server/src/trpc/answer-error.ts';
import type { Operation } from '../../apps/server/src/trpc/operation.ts';
import { createCallerFactory } from '../../apps/server/src/trpc/procedures.ts';
import { contextWithinServer } from '../../apps/server/src/trpc/within-server.ts';
import type { TestNursery } from '../support/nursery.ts';

export const listed: { path: string; operation: Operation }[] = Object.entries(operations).flatMap(([feature, named]) =>
  Object.entries(named).map(([name, operation]): { path: string; operation: Operation } => ({
    path: `${feature}.${name}`,
    operation,
  })),
);

export const sessionPaths = Object.keys(sessionProcedures).map((name) => `people.${name}`);

export type Answer = { ok: true; answer: unknown } | ({ ok: false } & Omit<ErrorAnswer, 'requestId'>);

const createCaller = createCallerFactory(appRouter);
type ByPath = Record<string, Record<string, (input: unknown) => Promise<unknown>>>;

/** Asks procedures of one nursery. What is answered has gone through JSON, as it would on its way to a browser. */
export function askerOf({ runner, app, people }: Pick<TestNursery, 'runner' | 'app' | 'people'>) {
  return async (path: string, input: unknown, role: Role | null = 'owner'): Promise<Answer> => {
    const caller = createCaller(
      contextWithinServer({ runner, database: app, caller: role === null ? null : people[role] }),
    ) as unknown as ByPath;
    const [feature = '', name = ''] = path.split('.');
    try {
      const answer = await caller[feature]?.[name]?.(input);
      return { ok: true, answer: JSON.parse(JSON.stringify(answer ?? null)) as unknown };
    } catch (error) {
      const { requestId: _, ...told } = errorAnswer(error, '');
      return { ok: false, ...told };
    }
  };
}

/** What a browser sends: a command's body under a command id, a query's input as it is. */
export const envelopeOf = (operation: Operation, body: unknown, commandId: string) =>
  operation.kind === 'command' ? { commandId, body } : body;
