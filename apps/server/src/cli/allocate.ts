// `rootclock allocate`: an instance as JSON on standard input, the answer as JSON on standard output. Nothing else is read,
// so that a planner can be tried out, or another program served, without a nursery.
import { text } from 'node:stream/consumers';
import { allocate as solve, InputError, type AllocationInstance } from '@rootclock/domain';
import { z } from 'zod';
import { CommandFailure } from './failure.ts';

// Only that there are rows where rows must be: what stands in them is judged, and named, by the domain.
const rows = z.array(z.looseObject({}));
const shape = z.looseObject({
  supply: rows,
  demand: z.array(z.looseObject({ accepts: rows })),
  current: rows.optional(),
});

/** `['supply', 0, 'units']` → `supply[0].units`, as the domain names it. */
const nameOf = (path: PropertyKey[]) => path.map((part, index) => (typeof part === 'number' ? `[${part}]` : `${index === 0 ? '' : '.'}${String(part)}`)).join('') || 'instance';

function readInstance(json: string): AllocationInstance {
  if (json.trim() === '') throw new CommandFailure('An instance is expected as JSON on standard input; nothing came.');
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new CommandFailure(`Standard input is not JSON: ${(error as Error).message}`, { cause: error });
  }
  const parsed = shape.safeParse(value);
  if (parsed.success) return parsed.data as unknown as AllocationInstance;
  throw new CommandFailure(parsed.error.issues.map((issue) => `${nameOf(issue.path)}: ${issue.message}`).join('\n'));
}

export async function allocate(): Promise<number> {
  const instance = readInstance(await text(process.stdin));
  try {
    process.stdout.write(`${JSON.stringify(solve(instance), undefined, 2)}\n`);
    return 0;
  } catch (error) {
    if (error instanceof InputError) throw new CommandFailure(error.message, { cause: error });
    throw error;
  }
}
