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
  /** So many at most work at the same time; one unless given. Each is started when there is something for it to do. */
  most?: number;
}

/** More than these are turned away at once: each would wait for all before it. */
const MOST_WAITING = 50;

/** Worker threads that are asked one question after the other, kept warm between them and started again where they ended. */
export class Thread<Question, Answer> {
  /** Each with what it works at; null where it is idle. */
  private readonly workers = new Map<Worker, Waiting<Question, Answer> | null>();
  private readonly waiting: Waiting<Question, Answer>[] = [];

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

  /** Ends all threads; what waits is refused. They start again when they are asked. */
  async stop(): Promise<void> {
    const error = new Error('the thread was stopped');
    const workers = [...this.workers];
    this.workers.clear();
    for (const each of this.waiting.splice(0)) refuseOne(each, error);
    for (const [, current] of workers) if (current) refuseOne(current, error);
    await Promise.all(workers.map(([worker]) => worker.terminate()));
  }

  private next(): void {
    if (this.waiting.length === 0) return;
    const worker = this.idle() ?? (this.workers.size < (this.options.most ?? 1) ? this.start() : null);
    if (!worker) return;
    const first = this.waiting.shift() as Waiting<Question, Answer>;
    worker.ref();
    const { patienceMs } = first;
    if (patienceMs !== null) first.timer = setTimeout(() => this.giveUp(first, patienceMs), patienceMs);
    this.workers.set(worker, first);
    worker.postMessage({ question: first.question });
  }

  private idle(): Worker | null {
    for (const [worker, current] of this.workers) if (current === null) return worker;
    return null;
  }

  private start(): Worker {
    const worker = new Worker(this.options.entry);
    this.workers.set(worker, null);
    worker.on('message', (told: Told<Answer>) => {
      if (told !== 'ready') this.settle(worker, told);
    });
    worker.on('error', (error) => this.fail(worker, error));
    worker.on('exit', (code) => this.fail(worker, new Error(`the thread ended with ${code}`)));
    return worker;
  }

  private settle(worker: Worker, told: Exclude<Told<Answer>, 'ready'>): void {
    const current = this.workers.get(worker);
    if (!current) return;
    this.workers.set(worker, null);
    // An idle thread keeps no process alive.
    worker.unref();
    if (told.error === null) {
      clearTimeout(current.timer ?? undefined);
      current.resolve(told.answer as Answer);
    } else refuseOne(current, new Error(`no answer could be reckoned: ${told.error}`));
    this.next();
  }

  /** The thread is gone: whoever waited for its answer is told, the others get a new one. */
  private fail(worker: Worker, error: unknown): void {
    const current = this.workers.get(worker);
    if (!this.workers.delete(worker)) return;
    if (current) refuseOne(current, error);
    this.next();
  }

  private tooLong(patienceMs = this.options.patienceMs): Error {
    return this.options.tooLong(Math.max(0, Math.round(patienceMs / 1000)));
  }

  private giveUp(asked: Waiting<Question, Answer>, afterMs: number): void {
    refuseOne(asked, this.tooLong(afterMs));
    const [worker] = [...this.workers].find(([, current]) => current === asked) ?? [];
    if (!worker) {
      this.waiting.splice(this.waiting.indexOf(asked), 1);
      return;
    }
    // Arithmetic in the middle of its work hears nothing, so the thread has to end.
    this.workers.delete(worker);
    void worker.terminate();
    this.next();
  }
}

function refuseOne({ reject, timer }: Pick<Waiting<never, never>, 'reject' | 'timer'>, error: unknown): void {
  clearTimeout(timer ?? undefined);
  reject(error);
}
