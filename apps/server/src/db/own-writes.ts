import { randomUUID } from 'node:crypto';
import type * as z from 'zod/mini';
import { derivedId } from '../derived-id.ts';
import { refuse } from '../refusal.ts';
import type { Caller, Command, CommandContext, ReadContext } from '../trpc/operation.ts';
import { dayIn } from './day-in.ts';
import { PlanAnew } from './plan-anew.ts';
import type { Database } from './pool.ts';
import { readOnce } from './reading.ts';

/** The day's roll: what time alone changes. It runs before the day's first write. */
export type RollDay = (context: CommandContext) => Promise<void>;

/** What of the day's roll, or of a plan made anew, can be reckoned before the nursery is locked: reads, and answers the reckoning that needs no connection. */
export type ForeseeRoll = (context: ReadContext) => Promise<() => Promise<void>>;

export interface Written<Answer> {
  answer: Answer;
  /** The plan is left to be solved after the commit. */
  isStale: boolean;
}

type OwnCommand = Command<z.ZodMiniType, null, null>;

export interface OwnWritesParts {
  database: Database;
  rollDay: RollDay;
  foreseeRoll: ForeseeRoll;
  clock: () => Date;
  /** Told of a look ahead that came to nothing; the write goes on without it. */
  lookAheadFailed?: (error: unknown) => void;
  /** The runner's way to write, in nobody's name and before the day is rolled too. */
  write(operation: OwnCommand, caller: Caller, commandId: string, inputHash: string, now: Date): Promise<Written<null>>;
}

interface OwnWrite {
  name: string;
  id: string;
  hash: string;
  today: string;
  now: Date;
  /** Comes to nothing where it could not be looked at ahead. */
  needsForesight?: true;
  run(context: CommandContext): Promise<void>;
}

/** What the server writes by itself: each day's roll, and plans that commands left stale. */
export function createOwnWrites({
  database,
  rollDay,
  foreseeRoll,
  clock,
  lookAheadFailed = () => {},
  write,
}: OwnWritesParts) {
  /** What takes long of it is reckoned before the nursery is locked. */
  async function foreseen(nurseryId: string, own: OwnWrite): Promise<Written<null>> {
    const { name, id, hash, today, now, run } = own;
    const system: Caller = { nurseryId, personId: '', personName: '', email: '', role: 'owner' };
    try {
      const foresee = await readOnce(database, nurseryId, (tx) =>
        foreseeRoll({ tx, nurseryId, personId: system.personId, role: system.role, today, now }),
      );
      await foresee();
    } catch (error) {
      if (own.needsForesight) throw error;
      // It only saves time under the lock: what was not foreseen is reckoned after the commit.
      lookAheadFailed(error);
    }
    const operation: OwnCommand = {
      kind: 'command',
      name,
      input: null as never,
      roles: [],
      before: () => null,
      run: async (context) => {
        await run(context);
        return null;
      },
    };
    return write(operation, system, id, hash, now);
  }

  /** Rolls the day of a nursery; harmless when it is rolled already. */
  async function roll({ nurseryId }: Pick<Caller, 'nurseryId'>, today: string, now: Date): Promise<void> {
    const id = keyOfDay(nurseryId, today);
    const { isStale } = await foreseen(nurseryId, { name: 'roll-day', id, hash: today, today, now, run: rollDay });
    if (isStale) plans.want(nurseryId);
  }

  const plans = new PlanAnew(async (nurseryId) => {
    const now = clock();
    const zone = await readOnce(database, nurseryId, async (_, found) => found);
    const { isStale } = await foreseen(nurseryId, {
      name: 'plan-anew',
      id: randomUUID(),
      hash: '',
      today: dayIn(now, zone ?? refuse('not-found', { what: 'nursery' })),
      now,
      needsForesight: true,
      run: async ({ touched }) => void (touched.allPromises = true),
    });
    return !isStale;
  }, lookAheadFailed);

  return { roll, plans };
}

/** One roll a nursery and day: its command id follows from both. */
const keyOfDay = (nurseryId: string, today: string): string => derivedId('roll-day', nurseryId, today);
