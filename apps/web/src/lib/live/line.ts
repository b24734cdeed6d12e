/**
 * The line on which changes are heard, as a small machine: open, or waiting to be opened again, or closed. It comes back after any answer,
 * after a silence, after the server was away; the pause before it grows and is drawn by chance, so that browsers that were cut off together
 * do not come back together. All that touches the world is handed in.
 */
import { LIVE_BEAT_MS, type LiveWord } from '@rootclock/contracts';
import { retryPauseMs } from '@rootclock/domain';
import { readFailure } from '../api/failure.ts';
import { heal, type Heard } from './heal.ts';

/** Two beats missed and some time for a slow line: nobody is there any more, whatever the connection looks like. */
export const SILENT_MS = 2.5 * LIVE_BEAT_MS;
const PAUSE = { firstMs: 1_000, longestMs: 30_000 };

export interface LiveLineParts {
  /** Opens a stream; answers how to end it. It tells of its own loss at most once, with the reason where it has one. */
  subscribe(take: (word: LiveWord) => void, lost: (reason: unknown) => void): () => void;
  /** Runs something later; answers how to call that off. */
  after(ms: number, run: () => void): () => void;
  chance(): number;
  /** These reads are to be asked for again. */
  stale(which: 'all' | readonly string[]): void;
  /** The server says that the session is over. */
  signedOut(): void;
}

export class LiveLine {
  private heard: Heard = { version: null };
  private wasOpen = false;
  private failures = 0;
  /** Ends the stream, or the waiting for the next one; null while closed. */
  private leave: (() => void) | null = null;
  private isWaiting = false;

  constructor(private readonly parts: LiveLineParts) {}

  open(): void {
    if (this.leave === null) this.connect();
  }

  close(): void {
    this.leave?.();
    this.leave = null;
    this.isWaiting = false;
  }

  /** The network is said to be back: the pause need not be sat out. */
  hurry(): void {
    if (!this.isWaiting) return;
    this.close();
    this.open();
  }

  private connect(): void {
    this.isWaiting = false;
    let isCurrent = true;
    let words = 0;
    let end = () => {};
    let silence = () => {};
    const leave = () => {
      isCurrent = false;
      silence();
      end();
    };
    const lost = (reason: unknown) => {
      if (!isCurrent) return;
      leave();
      this.wait(reason);
    };
    const watch = () => {
      silence();
      silence = this.parts.after(SILENT_MS, () => lost(null));
    };
    const take = (word: LiveWord) => {
      if (!isCurrent) return;
      watch();
      words += 1;
      this.take(word, words);
    };
    this.leave = leave;
    watch();
    const unsubscribe = this.parts.subscribe(take, lost);
    if (isCurrent) end = unsubscribe;
    else unsubscribe();
  }

  private wait(reason: unknown): void {
    this.failures += 1;
    this.isWaiting = true;
    this.leave = this.parts.after(
      retryPauseMs({ failures: this.failures, ...PAUSE, chance: this.parts.chance() }),
      () => this.connect(),
    );
    if (reason !== null && readFailure(reason).code === 'not-signed-in') this.parts.signedOut();
  }

  private take(word: LiveWord, words: number): void {
    // What a line missed while it was away, or before it could first be opened, may lie before the first version that its server tells.
    const isLate = words === 1 && (this.wasOpen || this.failures > 0);
    this.wasOpen = true;
    const isBeat = word.features === undefined;
    // A line that only opens and breaks again must not be tried ever faster; one that lasts to its next beat holds.
    if (isBeat && words > 1) this.failures = 0;
    const healed = heal(this.heard, word);
    this.heard = healed.heard;
    this.parts.stale(isLate ? 'all' : healed.stale);
  }
}
