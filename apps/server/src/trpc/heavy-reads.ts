import PQueue from 'p-queue';
import { refuse } from '../refusal.ts';

const AT_ONCE = 2;
/** Room for what one page asks for in one batch. */
const MOST_OPEN = 20;

/** Lets each person have a few heavy reads at a time, so that nobody's many questions keep the others waiting. */
export class HeavyReads {
  private readonly people = new Map<string, { turns: PQueue; open: number }>();

  /** Waits for a turn and reads. Refuses when too many wait already, or when nobody waits for the answer any more. */
  async inTurn<Answer>(
    personId: string,
    read: () => Promise<Answer>,
    signal: AbortSignal | undefined,
  ): Promise<Answer> {
    const person = this.people.get(personId) ?? { turns: new PQueue({ concurrency: AT_ONCE }), open: 0 };
    if (person.open >= MOST_OPEN) refuse('too-much-at-once', undefined);
    this.people.set(personId, person);
    person.open += 1;
    try {
      return await person.turns.add(() => (signal?.aborted ? refuse('too-much-at-once', undefined) : read()));
    } finally {
      person.open -= 1;
      if (person.open === 0) this.people.delete(personId);
    }
  }
}
