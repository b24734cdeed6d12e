/** Others' entries may move the same promises while they are solved; after so many times it is left to the next entry or look of the timer. */
const MOST_TRIES = 5;

/**
 * Solves after the commit what a command left stale, one nursery's plan at a time. What is wanted while it is at work is looked at again
 * afterwards.
 */
export class PlanAnew {
  private readonly working = new Map<string, Promise<void>>();
  private readonly wanted = new Set<string>();
  private isStopped = false;

  constructor(
    /** Plans everything of a nursery anew; answers whether the plan is whole now. */
    private readonly plan: (nurseryId: string) => Promise<boolean>,
    private readonly failed: (error: unknown) => void,
  ) {}

  want(nurseryId: string): void {
    if (this.isStopped) return;
    this.wanted.add(nurseryId);
    if (this.working.has(nurseryId)) return;
    const done = this.work(nurseryId).then(() => {
      this.working.delete(nurseryId);
      if (this.wanted.has(nurseryId)) this.want(nurseryId);
    });
    this.working.set(nurseryId, done);
  }

  /** Resolves when nothing is being solved any more. */
  async settled(): Promise<void> {
    while (this.working.size > 0) await Promise.all(this.working.values());
  }

  /** Begins nothing any more, and waits for what is under way. */
  async stop(): Promise<void> {
    this.isStopped = true;
    await this.settled();
  }

  private async work(nurseryId: string): Promise<void> {
    try {
      for (let tries = 0; this.wanted.delete(nurseryId) && tries < MOST_TRIES; tries++)
        if (!(await this.plan(nurseryId)) && !this.isStopped) this.wanted.add(nurseryId);
    } catch (error) {
      this.failed(error);
    }
    this.wanted.delete(nurseryId);
  }
}
