// `rootclock allocate`: an instance as JSON on standard input, the answer as JSON on standard output. Nothing else is read,
// so that a planner can be tried out, or another program served, without a nursery.
import { text } from 'node:stream/consumers';
import { allocate as solve, type AllocationInstance, findFaults } from '@rootclock/domain';
import * as z from 'zod';

// Only that there are rows where rows must be: what stands in them is judged, and named, by the domain.
const rows = z.array(z.looseObject({}));
const shape = z.looseObject({
  supply: rows,
  demand: z.array(z.looseObject({ accepts: rows })),
  current: rows.optional(),
});

/** `['supply', 0, 'units']` → `supply[0].units`, as the domain names it. */
const nameOf = (path: PropertyKey[]) =>
  path
    .map((part, index) => (typeof part === 'number' ? `[${part}]` : `${index === 0 ? '' : '.'}${String(part)}`))
    .join('') || 'instance';

/** The instance, or what is wrong with it, a sentence each. */
function readInstance(json: string): { instance: AllocationInstance } | { faults: string[] } {
  if (json.trim() === '') return { faults: ['An instance is expected as JSON on standard input; nothing came.'] };
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    return { faults: [`Standard input is not JSON: ${(error as Error).message}`] };
  }
  const parsed = shape.safeParse(value);
  if (!parsed.success) return { faults: parsed.error.issues.map((issue) => `${nameOf(issue.path)}: ${issue.message}`) };
  const instance = parsed.data as unknown as AllocationInstance;
  const faults = findFaults(instance);
  return faults.length > 0
    ? { faults: faults.map(({ message, data }) => (data ? `${message} ${JSON.stringify(data)}` : message)) }
    : { instance };
}

/** Answers the exit code: 0 solved, 2 an instance that breaks the form. */
export async function allocate(): Promise<number> {
  const read = readInstance(await text(process.stdin));
  if ('faults' in read) {
    for (const fault of read.faults) console.error(fault.replaceAll(/\s*\n\s*/g, ' '));
    return 2;
  }
  process.stdout.write(`${JSON.stringify(solve(read.instance), undefined, 2)}\n`);
  return 0;
}
