import { refuse } from '../refusal.ts';

/** Each holds its file in memory until it is kept: some 15 MB at most. */
const MOST_AT_ONCE = 12;
const MOST_A_PERSON = 3;

/** How many files arrive at a time, in all and of one person. */
export class Arrivals {
  private readonly people = new Map<string, number>();
  private open = 0;

  async take<Answer>(personId: string, work: () => Promise<Answer>): Promise<Answer> {
    const theirs = this.people.get(personId) ?? 0;
    if (this.open >= MOST_AT_ONCE || theirs >= MOST_A_PERSON) refuse('too-much-at-once', undefined);
    this.open += 1;
    this.people.set(personId, theirs + 1);
    try {
      return await work();
    } finally {
      this.open -= 1;
      const left = (this.people.get(personId) ?? 1) - 1;
      if (left === 0) this.people.delete(personId);
      else this.people.set(personId, left);
    }
  }
}
