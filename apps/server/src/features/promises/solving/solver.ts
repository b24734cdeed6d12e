import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { Thread } from '../../../thread/thread.ts';
import { planReservations } from '../allocation/plan.ts';
import type { Scope, ScopeReservation } from '../allocation/scope.ts';
import type { Reckoning, Reckonings } from './reckonings.ts';

/** Nobody waits for a lock meanwhile, so that this may take long. */
const PATIENCE_MS = 60_000;
/** From so many pairs of lots and lines on, solving takes long enough for others to notice. */
const LARGE_PAIRS = 20_000;
/** Plans that were solved before their command came to its turn; the oldest go first. */
const MOST_FORESEEN = 8;
/** Two at least, so that whoever asks does not wait behind a long plan. */
const THREADS = Math.min(4, Math.max(2, availableParallelism() - 1));

/** Something was not solved in the time that there was for it. */
export class NotSolvedInTime extends Error {
  override readonly name = 'NotSolvedInTime';
}

interface Foreseen {
  solving: Promise<void>;
  plan: ScopeReservation[] | null;
}

const threads = new Thread<Reckoning, unknown>({
  entry: new URL('./entry.mjs', import.meta.url),
  patienceMs: PATIENCE_MS,
  tooLong: (seconds) => new NotSolvedInTime(`the promises were not solved within ${seconds} seconds`),
  most: THREADS,
});
const foreseen = new Map<string, Foreseen>();

/** The one place where what takes long is solved: small scopes at once, large ones in threads, so that others' requests are answered meanwhile. */
export const solver = {
  isLarge({ supplies, lines }: Pick<Scope, 'supplies' | 'lines'>): boolean {
    const count = new Map<string, number>();
    for (const { item } of supplies) count.set(item, (count.get(item) ?? 0) + 1);
    return (
      lines.reduce(
        (pairs, { accepts }) => pairs + accepts.reduce((sum, { item }) => sum + (count.get(item) ?? 0), 0),
        0,
      ) > LARGE_PAIRS
    );
  },

  /** Reckons in a thread, and rejects with NotSolvedInTime what takes too long. */
  async apart<Name extends keyof Reckonings>(
    name: Name,
    asked: Parameters<Reckonings[Name]>[0],
  ): Promise<ReturnType<Reckonings[Name]>> {
    return (await threads.ask({ name, asked } as Reckoning)) as ReturnType<Reckonings[Name]>;
  },

  /** Reckons what was read for an answer: at once where its scope is small, else in a thread. */
  async reckon<Name extends keyof Reckonings>(
    name: Name,
    scope: Scope,
    asked: Parameters<Reckonings[Name]>[0],
    here: Reckonings[Name],
  ): Promise<ReturnType<Reckonings[Name]>> {
    if (solver.isLarge(scope)) return solver.apart(name, asked);
    return (here as (asked: unknown) => ReturnType<Reckonings[Name]>)(asked);
  },

  /** Solves a large scope now, outside any transaction, so that a command finds it solved. */
  async foresee(scope: Scope): Promise<void> {
    const key = keyOf(scope);
    const known = foreseen.get(key);
    if (known) return known.solving;
    const made: Foreseen = {
      plan: null,
      solving: solver.apart('plan', scope).then(
        (plan) => void (made.plan = plan),
        (error: unknown) => {
          foreseen.delete(key);
          throw error;
        },
      ),
    };
    foreseen.set(key, made);
    for (const oldest of [...foreseen.keys()].slice(0, -MOST_FORESEEN)) foreseen.delete(oldest);
    return made.solving;
  },

  /** The plan of a scope as far as it takes no time: a small one is solved, a large one was foreseen where nothing moved since, and else there is none. */
  planNow(scope: Scope): ScopeReservation[] | null {
    if (!solver.isLarge(scope)) return planReservations(scope);
    return foreseen.size === 0 ? null : (foreseen.get(keyOf(scope))?.plan ?? null);
  },

  stop: () => threads.stop(),
};

const inOrder = (rows: readonly unknown[]) => rows.map((row) => JSON.stringify(row)).sort();

/** The same for the same scope in whatever order its rows were read: what the database answers first is nothing that moved. */
export function keyOf({ today, horizonOn, supplies, lines, reservations, windows, heirs }: Scope): string {
  const asked = lines.map(({ accepts, refusedIds, ...rest }) => ({
    ...rest,
    accepts: inOrder(accepts),
    refusedIds: [...refusedIds].sort(),
  }));
  return createHash('sha256')
    .update(
      JSON.stringify([
        today,
        horizonOn,
        inOrder(supplies),
        inOrder(asked),
        inOrder(reservations),
        inOrder(windows),
        inOrder(heirs),
      ]),
    )
    .digest('base64');
}
