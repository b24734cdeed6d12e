// What a running server has opened, closed in the opposite order: the server before the database it writes to.

export interface Closing {
  /** Remembers how to close what was just opened, and how long that may take at most. What has no name is closed without a word. */
  add(what: string | undefined, close: (withinMs: number) => Promise<void> | void, patienceMs?: number): void;
  /** Closes everything, last opened first. What fails or hangs is told and does not keep the rest open. */
  all(): Promise<void>;
}

/** All of it together: whoever asked for a stop, be it a person or the system shutting down, waits ten seconds. */
const allWithinMs = 9_000;
/** What a single step may take, so that one that hangs leaves time for the others. */
const usualPatienceMs = 3_000;

export function createClosing(tell: (line: string) => void): Closing {
  const open: { what: string | undefined; close: (withinMs: number) => Promise<void> | void; patienceMs: number }[] =
    [];
  return {
    add: (what, close, patienceMs = usualPatienceMs) => void open.push({ what, close, patienceMs }),
    async all() {
      const until = performance.now() + allWithinMs;
      for (let each = open.pop(); each !== undefined; each = open.pop()) {
        const { what, close, patienceMs } = each;
        const withinMs = Math.max(0, Math.min(patienceMs, until - performance.now()));
        try {
          await within(withinMs, Promise.resolve(close(withinMs)));
          if (what !== undefined) tell(`Stopped ${what}.`);
        } catch (error) {
          tell(`Stopping ${what ?? 'orderly'} failed: ${(error as Error).message}`);
        }
      }
    },
  };
}

async function within(limitMs: number, work: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${Math.round(limitMs / 100) / 10} s`)), limitMs);
  });
  try {
    await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
