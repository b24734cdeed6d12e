import { Worker } from 'node:worker_threads';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Thread } from '../../../apps/server/src/thread/thread.ts';

const started: string[] = [];
vi.mock('node:worker_threads', async (importOriginal) => {
  const real = await importOriginal<typeof import('node:worker_threads')>();
  return {
    ...real,
    Worker: class extends real.Worker {
      constructor(...args: ConstructorParameters<typeof Worker>) {
        super(...args);
        started.push(String(args[0]));
      }
    },
  };
});

/** Answers what it is asked as it is, after so many milliseconds of work that hears nothing. */
const ECHO = new URL(
  `data:text/javascript,${encodeURIComponent(`
  import { parentPort } from 'node:worker_threads';
  parentPort.on('message', ({ question }) => {
    const until = performance.now() + question.ms;
    while (performance.now() < until);
    parentPort.postMessage({ answer: question.ms, error: null });
  });
  parentPort.postMessage('ready');
`)}`,
);

const open = (patienceMs = 30_000, most = 1) =>
  new Thread<{ ms: number }, number>({
    most,
    entry: ECHO,
    patienceMs,
    tooLong: (seconds) => new Error(`not within ${seconds} seconds`),
  });

describe('a thread', () => {
  let thread: ReturnType<typeof open>;
  afterEach(async () => {
    await thread.stop();
    started.length = 0;
  });

  it('that is stopped while questions wait refuses them all and starts no new one', async () => {
    thread = open();
    const asked = [thread.ask({ ms: 60_000 }), thread.ask({ ms: 1 }), thread.ask({ ms: 1 })];
    const told = Promise.allSettled(asked);
    await thread.stop();
    expect((await told).map(({ status }) => status)).toEqual(['rejected', 'rejected', 'rejected']);
    expect(started).toHaveLength(1);
  });

  it('answers again when it is asked after it was stopped', async () => {
    thread = open();
    expect(await thread.ask({ ms: 1 })).toBe(1);
    await thread.stop();
    expect(await thread.ask({ ms: 2 })).toBe(2);
    expect(started).toHaveLength(2);
  });

  it('refuses a question that still waits when its own time is over, and goes on with the one before', async () => {
    thread = open();
    const first = thread.ask({ ms: 300 });
    await expect(thread.ask({ ms: 1 }, 20)).rejects.toThrow('not within 0 seconds');
    expect(await first).toBe(300);
    expect(started).toHaveLength(1);
  });

  it('of two works at two questions at the same time, and starts no third one', async () => {
    thread = open(30_000, 2);
    const told = Promise.allSettled([thread.ask({ ms: 60_000 })]);
    expect(await Promise.all([thread.ask({ ms: 1 }), thread.ask({ ms: 2 })])).toEqual([1, 2]);
    expect(started).toHaveLength(2);
    await thread.stop();
    expect(await told).toMatchObject([{ status: 'rejected' }]);
  });

  it('refuses at once where no time is left', async () => {
    thread = open();
    await expect(thread.ask({ ms: 1 }, 0)).rejects.toThrow('not within');
    expect(started).toHaveLength(0);
  });
});
