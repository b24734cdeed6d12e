// What a running server has opened, closed in the opposite order: the server before the database it writes to.

export interface Closing {
  /** Remembers how to close what was just opened. What has no name is closed without a word. */
  add(what: string | undefined, close: () => Promise<void> | void): void;
  /** Closes everything, last opened first. What fails or hangs is told and does not keep the rest open. */
  all(): Promise<void>;
}

const patienceMs = 15_000;

export function createClosing(tell: (line: string) => void): Closing {
  const open: { what: string | undefined; close: () => Promise<void> | void }[] = [];
  return {
    add: (what, close) => void open.push({ what, close }),
    async all() {
      for (let each = open.pop(); each !== undefined; each = open.pop()) {
        const { what, close } = each;
        try {
          await within(patienceMs, Promise.resolve(close()));
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
    timer = setTimeout(() => reject(new Error(`no answer within ${limitMs / 1000} s`)), limitMs);
  });
  try {
    await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
