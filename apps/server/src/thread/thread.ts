import { Worker } from 'node:worker_threads';
import type { Told } from './messages.ts';

interface Waiting<Question, Answer> {
  question: Question;
  resolve(answer: Answer): void;
  reject(error: unknown): void;
  /** As long as it is waited for from when it is begun; null where that ends at a time of its own. */
  patienceMs: number | null;
  timer: NodeJS.Timeout | null;
}

export interface ThreadOptions {
  /** The file that the thread runs. */
  entry: URL;
  /** As long as an answer is waited for, from when it is begun. */
  patienceMs: number;
  /** What whoever waited too long is told. */
  tooLong: (seconds: number) => Error;
}

/** More than these are turned away at once: each would wait for all before it. */
const MOST_WAITING = 50;

/** A worker thread that is asked one question after the other, kept warm between them and started again where it ended. */
export class Thread<Question, Answer> {
  private worker: Worker | null = null;
  private readonly waiting: Waiting<Question, Answer>[] = [];
  private current: Waiting<Question, Answer> | null = null;

  constructor(private readonly options: ThreadOptions) {}

  /** Rejects with the error of `tooLong` when it does not answer in time: within its own, counted from now, where it is told one. */
  ask(question: Question, withinMs?: number): Promise<Answer> {
    if (this.waiting.length >= MOST_WAITING || (withinMs !== undefined && withinMs <= 0))
      return Promise.reject(this.tooLong(withinMs));
    return new Promise((resolve, reject) => {
      const asked: Waiting<Question, Answer> = {
        question,
        resolve,
        reject,
        patienceMs: withinMs === undefined ? this.options.patienceMs : null,
        timer: null,
      };
      if (withinMs !== undefined) asked.timer = setTimeout(() => this.giveUp(asked, withinMs), withinMs);
      this.waiting.push(asked);
      this.next();
    });
  }

  /** Ends the thread; what waits is refused. It starts again when it is asked. */
  async stop(): Promise<void> {
    const { worker } = this;
    // Whoever waits is told before the thread is let go, else the next of them would start another one.
    for (const each of this.waiting.splice(0)) refuseOne(each, new Error('the thread was stopped'));
    this.fail(new Error('the thread was stopped'));
    await worker?.terminate();
  }

  private next(): void {
    if (this.current) return;
    const first = this.waiting.shift();
    if (!first) {
      // An idle thread keeps no process alive.
      this.worker?.unref();
      return;
    }
    const worker = (this.worker ??= this.start());
    worker.ref();
    const { patienceMs } = first;
    if (patienceMs !== null) first.timer = setTimeout(() => this.giveUp(first, patienceMs), patienceMs);
    this.current = first;
    worker.postMessage({ question: first.question });
  }

  private start(): Worker {
    const worker = new Worker(this.options.entry);
    const isCurrent = () => this.worker === worker;
    worker.on('message', (told: Told<Answer>) => {
      if (told !== 'ready' && isCurrent()) this.settle(told);
    });
    worker.on('error', (error) => void (isCurrent() && this.fail(error)));
    worker.on('exit', (code) => void (isCurrent() && this.fail(new Error(`the thread ended with ${code}`))));
    return worker;
  }

  private settle(told: Exclude<Told<Answer>, 'ready'>): void {
    const { current } = this;
    if (!current) return;
    this.current = null;
    if (told.error === null) {
      clearTimeout(current.timer ?? undefined);
      current.resolve(told.answer as Answer);
    } else refuseOne(current, new Error(`no answer could be reckoned: ${told.error}`));
    this.next();
  }

  /** The thread is gone: whoever waited for its answer is told, the others get a new one. */
  private fail(error: unknown): void {
    const { current } = this;
    this.worker = null;
    this.current = null;
    if (current) refuseOne(current, error);
    if (this.waiting.length > 0) this.next();
  }

  private tooLong(patienceMs = this.options.patienceMs): Error {
    return this.options.tooLong(Math.max(0, Math.round(patienceMs / 1000)));
  }

  private giveUp(asked: Waiting<Question, Answer>, afterMs: number): void {
    refuseOne(asked, this.tooLong(afterMs));
    if (this.current !== asked) {
      this.waiting.splice(this.waiting.indexOf(asked), 1);
      return;
    }
    const { worker } = this;
    // Arithmetic in the middle of its work hears nothing, so the thread has to end.
    this.worker = null;
    this.current = null;
    void worker?.terminate();
    this.next();
  }
}

function refuseOne({ reject, timer }: Pick<Waiting<never, never>, 'reject' | 'timer'>, error: unknown): void {
  clearTimeout(timer ?? undefined);
  reject(error);
}
