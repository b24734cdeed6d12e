import type { LiveWord } from '@rootclock/contracts';
import type { Caller } from '../trpc/operation.ts';

/** What a page brings that wants to hear of changes. */
export interface Page {
  /** Whose session it is, asked anew; null when it is over. */
  callerNow(): Promise<Caller | null>;
  /** Cuts the line to the page, for a page that takes nothing any more. */
  hangUp(): void;
}

/**
 * One page's stream. What the page has not taken yet is kept as a single word: two changes become one that names the features of both,
 * and shows by its version that more than one entry was made. So a page that reads slowly, or not at all, costs no more than one that waits.
 */
export class Stream {
  private untaken: LiveWord | null = null;
  private beatsUntaken = 0;
  private end: { error: Error | null } | null = null;
  private wake: () => void = () => {};
  private isLooking = false;

  constructor(
    readonly caller: Caller,
    readonly page: Page,
  ) {}

  put(word: LiveWord): void {
    this.untaken = this.untaken === null ? word : together(this.untaken, word);
    this.wake();
  }

  /** As `put`; answers how many beats the page has let lie. */
  beat(version: number): number {
    this.beatsUntaken = this.untaken === null ? 0 : this.beatsUntaken + 1;
    this.put({ version });
    return this.beatsUntaken;
  }

  /** Ends the stream: with an error where the page has to know why. */
  over(error: Error | null = null): void {
    this.end ??= { error };
    this.wake();
  }

  /** Looks whether the session still holds. A database that is away says nothing about that, and the next look will. */
  async look(refusal: () => Error): Promise<void> {
    if (this.isLooking) return;
    this.isLooking = true;
    try {
      const now = await this.page.callerNow();
      if (now?.personId !== this.caller.personId || now.nurseryId !== this.caller.nurseryId) this.over(refusal());
    } catch {
      // Said by whoever asks for data meanwhile.
    } finally {
      this.isLooking = false;
    }
  }

  async *words(): AsyncGenerator<LiveWord, void> {
    for (;;) {
      if (this.end?.error) throw this.end.error;
      if (this.end) return;
      const word = this.untaken;
      this.untaken = null;
      if (word !== null) yield word;
      else {
        await new Promise<void>((resolve) => {
          this.wake = resolve;
        });
      }
    }
  }
}

function together(before: LiveWord, word: LiveWord): LiveWord {
  // A beat brings news only where it is ahead of what was told.
  if (word.features === undefined) return word.version > before.version ? word : before;
  return { version: word.version, features: [...new Set([...(before.features ?? []), ...word.features])] };
}
