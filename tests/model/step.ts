import type fc from 'fast-check';
import { expect } from 'vitest';
import type { Ledger } from './ledger.ts';
import type { World } from './world.ts';

export interface Shortening {
  lineId: string;
  units: number;
}

/** One thing that somebody does: what the model says of it, how it is sent, and what it does to the model. */
export interface Plan {
  /** Codes of which one must be the answer; with none it must be done. */
  refusals: string[];
  /** Lines that become shorter: it is refused with just these first, and done when they are accepted. */
  shortens?: Shortening[];
  send(world: World, commandId: string, accepted: Shortening[]): Promise<unknown>;
  apply(ledger: Ledger, entryId: string): void;
  /** Lots and lines whose pins it may change. */
  concerns: string[];
  /** Lots among which plants only change their label: what is pinned of them stays pinned as far as the plants may be promised. */
  carries?: string[];
}

/** A step chooses among what there is by numbers, since what there is is known only when its turn comes. */
export type Planner<Choice> = (ledger: Ledger, choice: Choice) => Plan | null;

async function outcomeOf(work: Promise<unknown>): Promise<{ code: string; lines: Shortening[] }> {
  try {
    await work;
    return { code: 'done', lines: [] };
  } catch (error) {
    const { code, data } =
      (error as { cause?: { code?: string; data?: { lines?: { lineId: string; shorterBy: number }[] } } }).cause ?? {};
    if (code === undefined || code === 'fault') throw error;
    return { code, lines: (data?.lines ?? []).map(({ lineId, shorterBy }) => ({ lineId, units: shorterBy })) };
  }
}

const byLine = (a: Shortening, b: Shortening) => (a.lineId < b.lineId ? -1 : 1);

/** Does what was planned, compares the answer with what the model expects, and then all that is stored. */
async function follow(plan: Plan, step: string, ledger: Ledger, world: World): Promise<void> {
  const shortens = plan.refusals.length === 0 ? (plan.shortens ?? []) : [];
  if (shortens.length > 0) {
    const asked = await outcomeOf(plan.send(world, ledger.id('asking'), []));
    expect({ step, code: asked.code, lines: asked.lines.sort(byLine) }).toEqual({
      step,
      code: 'would-shorten',
      lines: [...shortens].sort(byLine),
    });
  }
  const entryId = ledger.id('entry');
  const { code } = await outcomeOf(plan.send(world, entryId, shortens));
  expect(plan.refusals.length === 0 ? ['done'] : plan.refusals, step).toContain(code);
  if (code === 'done') {
    plan.apply(ledger, entryId);
    const entry = ledger.entries.find(({ id }) => id === entryId);
    if (entry) Object.assign(entry, { concerns: plan.concerns, carries: plan.carries });
  }
  ledger.next();
  await world.compare(
    ledger,
    new Set(code === 'done' ? plan.concerns : []),
    code === 'done' ? plan.carries : undefined,
  );
}

export class Step<Choice> implements fc.AsyncCommand<Ledger, World> {
  constructor(
    private readonly name: string,
    private readonly planner: Planner<Choice>,
    private readonly choice: Choice,
  ) {}

  check(ledger: Readonly<Ledger>): boolean {
    return this.planner(ledger as Ledger, this.choice) !== null;
  }

  async run(ledger: Ledger, world: World): Promise<void> {
    const plan = this.planner(ledger, this.choice);
    if (plan) await follow(plan, this.toString(), ledger, world);
  }

  toString(): string {
    return `${this.name}(${JSON.stringify(this.choice)})`;
  }
}

/** The one of a list that a number chooses. */
export const chosen = <Row>(rows: readonly Row[], number: number): Row | undefined =>
  rows[number % Math.max(1, rows.length)];
