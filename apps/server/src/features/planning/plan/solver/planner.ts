import { Worker } from 'node:worker_threads';
import type { PlanFacts, ProductionPlan } from '@rootclock/domain';
import { Refusal } from '../../../../refusal.ts';
import type { Told } from './messages.ts';

interface Waiting {
  facts: PlanFacts;
  resolve(plan: ProductionPlan): void;
  reject(error: unknown): void;
}

/** As long as a person waits for a plan, from when it is begun. */
const PATIENCE_MS = 20_000;
/** More than these are turned away at once: each would wait for all before it. */
const MOST_WAITING = 50;

export class Planner {
  private worker: Worker | null = null;
  private readonly waiting: Waiting[] = [];
  private current: (Waiting & { timer: NodeJS.Timeout }) | null = null;

  constructor(private readonly patienceMs = PATIENCE_MS, private readonly entry = new URL('./entry.mjs', import.meta.url)) {}

  /** Reckons a plan in the worker thread, one after the other. Refuses with `plan-takes-too-long` when it does not answer in time. */
  plan(facts: PlanFacts): Promise<ProductionPlan> {
    if (this.waiting.length >= MOST_WAITING) return Promise.reject(this.tooLong());
    return new Promise((resolve, reject) => {
      this.waiting.push({ facts, resolve, reject });
      this.next();
    });
  }

  /** Starts the thread before anybody asks, so that the first plan need not wait for it. */
  warm(): void {
    this.worker ??= this.start();
    if (!this.current) this.worker.unref();
  }

  /** Ends the thread; what waits is refused. It starts again when it is asked. */
  async stop(): Promise<void> {
    const { worker } = this;
    this.fail(new Error('the planner was stopped'));
    for (const { reject } of this.waiting.splice(0)) reject(new Error('the planner was stopped'));
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
    const timer = setTimeout(() => this.giveUp(), this.patienceMs);
    this.current = { ...first, timer };
    worker.postMessage({ facts: first.facts });
  }

  private start(): Worker {
    const worker = new Worker(this.entry);
    const isCurrent = () => this.worker === worker;
    worker.on('message', (told: Told) => {
      if (told !== 'ready' && isCurrent()) this.answer(told);
    });
    worker.on('error', (error) => void (isCurrent() && this.fail(error)));
    worker.on('exit', (code) => void (isCurrent() && this.fail(new Error(`the planning thread ended with ${code}`))));
    return worker;
  }

  private answer(told: Exclude<Told, 'ready'>): void {
    const { current } = this;
    if (!current) return;
    clearTimeout(current.timer);
    this.current = null;
    if (told.plan) current.resolve(told.plan);
    else current.reject(new Error(`the plan could not be reckoned: ${told.error}`));
    this.next();
  }

  /** The thread is gone: whoever waited for its answer is told, the others get a new one. */
  private fail(error: unknown): void {
    const { current } = this;
    this.worker = null;
    this.current = null;
    if (current) {
      clearTimeout(current.timer);
      current.reject(error);
    }
    if (this.waiting.length > 0) this.next();
  }

  private tooLong(): Refusal {
    return new Refusal('plan-takes-too-long', { seconds: Math.round(this.patienceMs / 1000) });
  }

  private giveUp(): void {
    const { worker, current } = this;
    // A solver in the middle of its work hears nothing, so the thread has to end.
    this.worker = null;
    this.current = null;
    void worker?.terminate();
    current?.reject(this.tooLong());
    this.next();
  }
}

/** One thread a process, kept warm between plans. */
export const planner = new Planner();
