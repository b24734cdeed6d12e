import { retryPauseMs } from '@rootclock/domain';
import { DateTime } from 'luxon';
import * as z from 'zod/mini';
import { dayIn } from './day-in.ts';
import type { Database } from './pool.ts';
import type { Runner } from './runner.ts';

/** At least so often the nurseries are looked at: one may be new or have moved, and a machine may have slept. */
const LOOK_EVERY_MS = 5 * 60_000;
/** Drawn by chance after each midnight, so that several servers do not all begin in the same moment. */
const SPREAD_MS = 5_000;
const PAUSE = { firstMs: 2_000, longestMs: LOOK_EVERY_MS };

export interface DayTimerParts {
  database: Database;
  runner: Pick<Runner, 'roll' | 'clock' | 'plans'>;
  /** Runs something later; answers how to call that off. */
  after(ms: number, run: () => void): () => void;
  chance(): number;
  /** Told of the first failure until all went well again. */
  failed(error: unknown): void;
}

const nurseryRow = z.strictObject({
  nurseryId: z.string(),
  zone: z.string(),
  rolledOn: z.nullable(z.string()),
  planIsStale: z.boolean(),
});
type Nursery = z.infer<typeof nurseryRow>;

/**
 * Rolls each nursery's day soon after its own midnight. A nursery whose day was rolled already, by its first write or by another server, is left
 * alone: the command's id follows from nursery and day. Between two looks nothing is held but a timer.
 */
export class DayTimer {
  private callOff: (() => void) | null = null;
  private isStopped = false;
  private failures = 0;

  constructor(private readonly parts: DayTimerParts) {}

  start(): void {
    this.lookIn(this.parts.chance() * SPREAD_MS);
  }

  /** Looks no more. A roll under way ends by itself, and takes effect as a whole or not at all. */
  stop(): void {
    this.isStopped = true;
    this.callOff?.();
  }

  private lookIn(ms: number): void {
    if (!this.isStopped) this.callOff = this.parts.after(ms, () => void this.look());
  }

  private async look(): Promise<void> {
    let untilNextMs = LOOK_EVERY_MS;
    let failure: { error: unknown } | null = null;
    try {
      for (const nursery of await everyNursery(this.parts.database)) {
        try {
          await this.roll(nursery);
          untilNextMs = Math.min(untilNextMs, untilMidnightMs(this.parts.runner.clock(), nursery.zone));
        } catch (error) {
          // One nursery's failure keeps no other one in yesterday.
          failure ??= { error };
        }
      }
    } catch (error) {
      failure = { error };
    }
    if (failure === null) this.failures = 0;
    else {
      if (this.failures === 0 && !this.isStopped) this.parts.failed(failure.error);
      this.failures += 1;
      untilNextMs = Math.min(
        untilNextMs,
        retryPauseMs({ failures: this.failures, ...PAUSE, chance: this.parts.chance() }),
      );
    }
    this.lookIn(untilNextMs + this.parts.chance() * SPREAD_MS);
  }

  private async roll({ nurseryId, zone, rolledOn, planIsStale }: Nursery): Promise<void> {
    const now = this.parts.runner.clock();
    const today = dayIn(now, zone);
    if (this.isStopped) return;
    if (rolledOn !== null && rolledOn >= today) {
      // A server may have ended before it solved what it left stale.
      if (planIsStale) this.parts.runner.plans.want(nurseryId);
      return;
    }
    await this.parts.runner.roll({ nurseryId }, today, now);
  }
}

function everyNursery(database: Database): Promise<Nursery[]> {
  return database.rows(
    nurseryRow,
  )`SELECT nursery_id::text AS "nurseryId", zone, rolled_on AS "rolledOn", plan_is_stale AS "planIsStale" FROM every_nursery()`;
}

const untilMidnightMs = (now: Date, zone: string) =>
  DateTime.fromJSDate(now, { zone }).plus({ days: 1 }).startOf('day').toMillis() - now.getTime();
