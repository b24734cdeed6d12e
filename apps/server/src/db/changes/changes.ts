import { retryPauseMs } from '@rootclock/domain';
import type { Listener, Standing } from './listener.ts';
import { readTold, type Change, type SessionEnd } from './told.ts';

const PAUSE = { firstMs: 500, longestMs: 8_000 };
const OPEN_WITHIN_MS = 8_000;
const CHECK_EVERY_MS = 10_000;
const CHECK_WITHIN_MS = 5_000;

export interface ChangesParts {
  open(hear: (payload: string) => void): Listener;
  /** Runs something later; answers how to call that off. */
  after(ms: number, run: () => void): () => void;
  chance(): number;
  /** How far every nursery is, each time that listening begins: what was missed before shows in it. */
  stands(standings: Standing[]): void;
  changed(change: Change): void;
  sessionEnded(end: SessionEnd): void;
  /** The connection was lost or could not be made; told once until it held again. */
  lost(reason: Error): void;
  /** A notification of somebody else's; told once. */
  odd(payload: string): void;
}

/**
 * Hears what commits tell, for as long as the process lives. One step follows the other in one loop, so that there is never more than one
 * connection nor more than one timer: open, look every few seconds whether it still answers, and when it is gone wait and open again.
 */
export class Changes {
  private listener: Listener | null = null;
  private wake: (() => void) | null = null;
  private running: Promise<void> | null = null;
  private isStopped = false;
  private failures = 0;
  private wasOdd = false;
  /** What was heard before it was known how far every nursery is; null once that is known. */
  private early: string[] | null = null;

  constructor(private readonly parts: ChangesParts) {}

  /** Settles when it listens or the first try failed; a database that is away then is waited for. */
  start(): Promise<void> {
    return new Promise((tried) => {
      this.running = this.run(tried);
    });
  }

  /** Settles when no connection and no timer is left, whatever the database does. */
  async stop(): Promise<void> {
    this.isStopped = true;
    this.listener?.cut(new Error('stopped'));
    this.wake?.();
    await this.running;
  }

  private async run(tried: () => void): Promise<void> {
    while (!this.isStopped) {
      this.early = [];
      const listener = this.parts.open((payload) => this.hear(payload));
      this.listener = listener;
      try {
        this.begin(await this.within(OPEN_WITHIN_MS, listener, listener.listening));
        tried();
        await this.keep(listener);
      } catch (error) {
        if (this.failures === 0 && !this.isStopped) this.parts.lost(error as Error);
        this.failures += 1;
      }
      listener.cut(new Error('given up'));
      await listener.gone;
      this.listener = null;
      this.wake?.();
      tried();
      if (!this.isStopped)
        await this.pause(retryPauseMs({ failures: this.failures, ...PAUSE, chance: this.parts.chance() }));
    }
  }

  /**
   * Looks whether the connection still answers, until it does not or nobody wants to hear any more. One that lasted only moments counts as
   * one more failure.
   */
  private async keep(listener: Listener): Promise<void> {
    while (!this.isStopped) {
      await orGone(listener, this.pause(CHECK_EVERY_MS));
      await this.within(CHECK_WITHIN_MS, listener, listener.check());
      this.failures = 0;
    }
  }

  private async within<Answer>(ms: number, listener: Listener, work: Promise<Answer>): Promise<Answer> {
    const callOff = this.parts.after(ms, () =>
      listener.cut(new Error(`the database gave no answer within ${ms / 1000} seconds`)),
    );
    try {
      return await orGone(listener, work);
    } finally {
      callOff();
    }
  }

  private pause(ms: number): Promise<void> {
    if (this.isStopped) return Promise.resolve();
    return new Promise((resolve) => {
      const callOff = this.parts.after(ms, resolve);
      this.wake = () => {
        this.wake = null;
        callOff();
        resolve();
      };
    });
  }

  /** A change may be heard before the answer to a question that was put before it; told in that order it would be taken back. */
  private begin(standings: Standing[]): void {
    const early = this.early ?? [];
    this.early = null;
    this.parts.stands(standings);
    for (const payload of early) this.hear(payload);
  }

  private hear(payload: string): void {
    if (this.early !== null) return void this.early.push(payload);
    const told = readTold(payload);
    if (told === null) {
      if (!this.wasOdd) this.parts.odd(payload);
      this.wasOdd = true;
    } else if ('person' in told) this.parts.sessionEnded(told);
    else this.parts.changed(told);
  }
}

/** What the work answers, or the reason why its connection is gone. */
const orGone = <Answer>(listener: Listener, work: Promise<Answer>): Promise<Answer> =>
  Promise.race([work, listener.gone.then((reason) => Promise.reject(reason))]);
