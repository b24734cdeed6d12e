import { addDays, type Role } from '@rootclock/domain';
import { DateTime } from 'luxon';
import type { Database } from '../db/pool.ts';
import { createRunner } from '../db/runner.ts';
import { foreseeRoll, replan, rollDay } from '../features/replan.ts';
import { appRouter } from '../router.ts';
import type { Caller } from '../trpc/operation.ts';
import { createCallerFactory } from '../trpc/procedures.ts';
import { contextWithinServer } from '../trpc/within-server.ts';
import { type Chance, chanceFrom } from './random.ts';

export const ZONE = 'America/Chicago';
const SEED = 20_270_415;

interface Step {
  on: string;
  /** Of the same day, what was planned first happens first. */
  order: number;
  work: () => Promise<void>;
}

const callerFactory = createCallerFactory(appRouter);
export type Procedures = ReturnType<typeof callerFactory>;

/**
 * Where the scenario is played: a clock that walks from the first day to today, a list of what happens when, and the same procedures that
 * people's screens call. Nothing of the demo is written past them.
 */
export class Stage {
  readonly chance: Chance = chanceFrom(SEED);
  readonly nurseryId: string = this.chance.id();
  private readonly planned: Step[] = [];
  private order = 0;
  private now = new Date();
  private readonly people = new Map<Role, Caller>();
  private readonly runner: ReturnType<typeof createRunner>;

  constructor(
    private readonly database: Database,
    readonly today: string,
  ) {
    this.runner = createRunner({ database, replan, rollDay, foreseeRoll, clock: () => this.now });
  }

  addPerson(caller: Caller): void {
    this.people.set(caller.role, caller);
  }

  as(role: Role): Procedures {
    const caller = this.people.get(role) ?? null;
    return callerFactory(contextWithinServer({ runner: this.runner, database: this.database, caller }));
  }

  /** Wraps a body as a browser's outbox does, with a command id that is the same each time. */
  sent<Body>(body: Body): { commandId: string; body: Body } {
    return { commandId: this.chance.id(), body };
  }

  setDay(on: string): void {
    this.now = DateTime.fromISO(`${on}T15:00:00`, { zone: ZONE }).toJSDate();
  }

  /** Plans work for the next of the two days in the week on which such work is done here; each day with work costs a roll of the day. */
  onWorkday(day: string, work: (day: string) => Promise<void>): void {
    const weekday = new Date(`${day}T00:00:00Z`).getUTCDay();
    const wait = weekday === 1 || weekday === 4 ? 0 : weekday === 0 ? 1 : weekday < 4 ? 4 - weekday : 8 - weekday;
    const snapped = addDays(day, wait);
    this.on(snapped <= this.today ? snapped : day, work);
  }

  /** Plans work for a day; what lies after today has not happened yet and is left out. */
  on(day: string, work: (day: string) => Promise<void>): void {
    if (day <= this.today) this.planned.push({ on: day, order: this.order++, work: () => work(day) });
  }

  /** Plays everything in order of days; work may plan more work for the same day or later ones. */
  async play(): Promise<void> {
    for (;;) {
      const step = this.planned.reduce<Step | undefined>(
        (first, each) =>
          first === undefined || each.on < first.on || (each.on === first.on && each.order < first.order)
            ? each
            : first,
        undefined,
      );
      if (!step) return;
      this.planned.splice(this.planned.indexOf(step), 1);
      this.setDay(step.on);
      await step.work();
    }
  }
}
