import { createHash } from 'node:crypto';
import type { AllocationInstance, Assignment } from '@rootclock/domain';
import { Thread } from '../../../../thread/thread.ts';

/** What is looked ahead at may take so long, since nobody waits for a lock meanwhile. */
const PATIENCE_MS = 60_000;
/** From so many pairs of lots and lines on, solving takes long enough for others to notice. */
const LARGE_PAIRS = 20_000;
/** Solutions that were found before their command came to its turn; the oldest go first. */
const MOST_FORESEEN = 8;

/** An instance was not solved in the time that there was for it. */
export class NotSolvedInTime extends Error {
  override readonly name = 'NotSolvedInTime';
}

const thread = new Thread<AllocationInstance, Assignment[]>({
  entry: new URL('./entry.mjs', import.meta.url),
  patienceMs: PATIENCE_MS,
  tooLong: (seconds) => new NotSolvedInTime(`the promises were not planned within ${seconds} seconds`),
});
const foreseen = new Map<string, Assignment[]>();

/** Solves large instances in a thread of its own, and remembers what it was asked to solve ahead. */
export const allocator = {
  isLarge({ supply, demand }: AllocationInstance): boolean {
    const supplies = new Map<string, number>();
    for (const { item } of supply) supplies.set(item, (supplies.get(item) ?? 0) + 1);
    return (
      demand.reduce(
        (pairs, { accepts }) => pairs + accepts.reduce((sum, { item }) => sum + (supplies.get(item) ?? 0), 0),
        0,
      ) > LARGE_PAIRS
    );
  },

  /** Solves an instance now so that it need not be solved while others wait for the nursery. */
  async foresee(instance: AllocationInstance): Promise<void> {
    const key = keyOf(instance);
    if (foreseen.has(key)) return;
    foreseen.set(key, await thread.ask(instance));
    for (const oldest of [...foreseen.keys()].slice(0, -MOST_FORESEEN)) foreseen.delete(oldest);
  },

  /** What was foreseen is taken where not a single number moved since; anything else is solved again, or rejects with NotSolvedInTime. */
  async solve(instance: AllocationInstance, withinMs: number): Promise<Assignment[]> {
    return foreseen.get(keyOf(instance)) ?? thread.ask(instance, withinMs);
  },

  stop: () => thread.stop(),
};

const inOrder = (rows: readonly unknown[]) => rows.map((row) => JSON.stringify(row)).sort();

/** The same for the same instance in whatever order its rows were read: what the database answers first is nothing that moved. */
function keyOf({ today, horizonOn, supply, demand, current }: AllocationInstance): string {
  const demands = demand.map(({ accepts, refuses, ...rest }) => ({
    ...rest,
    accepts: inOrder(accepts),
    refuses: inOrder(refuses ?? []),
  }));
  return createHash('sha256')
    .update(JSON.stringify([today, horizonOn, inOrder(supply), inOrder(demands), inOrder(current ?? [])]))
    .digest('base64');
}
