/**
 * The outbox: keeps, sends in order, waits, parks. All that touches the world is handed in, so that tests play a bad line with a
 * clock of their own. One drain runs at a time in a browser, held by a lock over all its tabs.
 */
import { CommandError, type Failure } from '../api/failure.ts';
import { nextStep, reduce, type Entry, type Happening, type Queue } from './queue.ts';
import type { Storage } from './storage.ts';
import type { Outcome, Transport } from './transport.ts';

/** What tabs tell each other. */
export type Word = { kind: 'changed' } | { kind: 'outcome'; id: string; outcome: Outcome };

export interface OutboxParts {
  storage: Storage;
  transport: Transport;
  /** Runs the work while no other tab does the same. */
  lock: (work: () => Promise<void>) => Promise<void>;
  channel: { post(word: Word): void; listen(take: (word: Word) => void): void };
  now: () => number;
  later: (run: () => void, ms: number) => void;
  onAnswered: (entry: Entry) => void;
  /** An entry was refused whose form is gone. */
  onParked: (entry: Entry, failure: Failure) => void;
  /** The server takes this tab for another person's. */
  onAnotherPerson: () => void;
}

export interface OutboxState {
  queue: Queue;
  /** False until the device was asked what waits on it. */
  isKnown: boolean;
  sendingIds: readonly string[];
  /** Entries wait until somebody signs in again. */
  signedOut: boolean;
  lasting: boolean;
}

interface Waiter {
  resolve(answer: unknown): void;
  reject(error: CommandError): void;
}

export class Outbox {
  private state: OutboxState = { queue: [], isKnown: false, sendingIds: [], signedOut: false, lasting: true };
  private readonly listeners = new Set<() => void>();
  private readonly waiters = new Map<string, Waiter>();
  /** Who works in this tab, also when their session is over: what they enter is theirs. */
  private personId: string | null = null;
  /** Nothing is sent until somebody signs in again. */
  private halted = true;
  /** Counts the sign-ins, so that an answer to an earlier session halts no later one. */
  private turn = 0;
  private draining = false;
  private drainAgain = false;

  constructor(private readonly parts: OutboxParts) {
    parts.channel.listen((word) => void this.hear(word));
  }

  readonly snapshot = (): OutboxState => this.state;
  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Who is signed in now: their entries go out, those of others stay. */
  async signedInAs(personId: string | null): Promise<void> {
    this.personId = personId;
    this.halted = personId === null;
    this.turn += 1;
    this.show({
      queue: await this.parts.storage.read(),
      isKnown: true,
      signedOut: personId === null,
      lasting: this.parts.storage.lasting(),
    });
    await this.drain();
  }

  /** Keeps an entry and sends it when its turn comes. Resolves with the server's answer; rejects with CommandError when refused. */
  enter(
    entry: Omit<Entry, 'personId' | 'enteredAt' | 'hasBytes' | 'tries' | 'dueAt' | 'parked'>,
    { replaces, bytes }: { replaces?: string | undefined; bytes?: Blob | undefined } = {},
  ): Promise<unknown> {
    if (this.personId === null) throw new Error('an entry needs somebody who makes it');
    const whole: Entry = {
      ...entry,
      personId: this.personId,
      enteredAt: this.parts.now(),
      ...(bytes && { hasBytes: true }),
      tries: 0,
      dueAt: 0,
      parked: null,
    };
    return new Promise((resolve, reject) => {
      this.waiters.set(whole.id, { resolve, reject });
      const carried = bytes && new Map([[whole.id, bytes]]);
      const happening = { kind: 'entered', entry: whole, ...(replaces === undefined ? {} : { replaces }) } as const;
      void this.apply(happening, carried).then(() => this.drain());
    });
  }

  /** The form is gone: what becomes of the entry is no longer its business, and a refusal is parked for the list. */
  release(id: string): void {
    this.waiters.delete(id);
  }

  async sendAgain(id: string): Promise<void> {
    await this.apply({ kind: 'send-again', id });
    await this.drain();
  }

  async discard(id: string): Promise<void> {
    await this.apply({ kind: 'discarded', id });
  }

  /** The line is said to be back: waiting entries need not sit out their pause. */
  async hurry(): Promise<void> {
    await this.apply({ kind: 'hurried' });
    await this.drain();
  }

  async drain(): Promise<void> {
    this.drainAgain = true;
    if (this.draining) return;
    this.draining = true;
    try {
      while (this.drainAgain) {
        this.drainAgain = false;
        await this.parts.lock(() => this.sendAll());
      }
    } finally {
      this.draining = false;
    }
  }

  private async sendAll(): Promise<void> {
    for (;;) {
      const step = nextStep(await this.parts.storage.read(), this.halted ? null : this.personId, this.parts.now());
      if (step.kind === 'wait') this.parts.later(() => void this.drain(), step.ms);
      if (step.kind !== 'send') return;
      const { entries } = step;
      this.show({ sendingIds: entries.map(({ id }) => id) });
      const turn = this.turn;
      const outcomes = await this.parts.transport(entries);
      this.show({ sendingIds: [] });
      for (const [at, outcome] of outcomes.entries()) {
        const entry = entries[at];
        if (!entry) break;
        if (outcome.kind === 'signed-out' || outcome.kind === 'another-person') {
          if (turn === this.turn) return this.halt(outcome);
        } else if (outcome.kind !== 'left-out') await this.settle(entry, outcome);
      }
    }
  }

  private halt(outcome: Outcome): void {
    this.halted = true;
    this.show({ signedOut: true });
    if (outcome.kind === 'another-person') this.parts.onAnotherPerson();
  }

  private async settle(
    entry: Entry,
    outcome: Exclude<Outcome, { kind: 'signed-out' | 'another-person' | 'left-out' }>,
  ): Promise<void> {
    if (outcome.kind === 'lost') {
      await this.apply({ kind: 'lost', id: entry.id, now: this.parts.now() });
      return;
    }
    // Parked before anyone is told: should this tab die now, the refusal and its input are still there.
    await this.apply(
      outcome.kind === 'answered'
        ? { kind: 'answered', id: entry.id }
        : { kind: 'refused', id: entry.id, failure: outcome.failure },
    );
    if (outcome.kind === 'answered') this.parts.onAnswered(entry);
    const claimed = await this.tell(entry.id, outcome);
    this.parts.channel.post({ kind: 'outcome', id: entry.id, outcome });
    if (outcome.kind === 'refused' && !claimed) this.parts.onParked(entry, outcome.failure);
  }

  /** Hands the outcome to the form that waits for it in this tab; a refused entry is then the form's again. */
  private async tell(id: string, outcome: Outcome): Promise<boolean> {
    const waiter = this.waiters.get(id);
    if (!waiter) return false;
    this.waiters.delete(id);
    if (outcome.kind === 'answered') waiter.resolve(outcome.answer);
    if (outcome.kind === 'refused') {
      await this.apply({ kind: 'discarded', id });
      waiter.reject(new CommandError(outcome.failure));
    }
    return true;
  }

  private async hear(word: Word): Promise<void> {
    if (word.kind === 'outcome') await this.tell(word.id, word.outcome);
    this.show({ queue: await this.parts.storage.read() });
  }

  private async apply(happening: Happening, carried?: ReadonlyMap<string, Blob>): Promise<void> {
    const queue = await this.parts.storage.change((before) => reduce(before, happening), carried);
    this.show({ queue, lasting: this.parts.storage.lasting() });
    this.parts.channel.post({ kind: 'changed' });
  }

  private show(part: Partial<OutboxState>): void {
    this.state = { ...this.state, ...part };
    for (const listener of this.listeners) listener();
  }
}
