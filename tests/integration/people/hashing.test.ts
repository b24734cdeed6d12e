// Slow hashing waits its turn off the event loop, two at a time, and what does not fit is refused.
import { describe, expect, test } from 'vitest';
import { isPassword, passwordHash } from '../../../apps/server/src/features/people/passwords/hashing.ts';
import { requireUncommon } from '../../../apps/server/src/features/people/passwords/judge.ts';
import { HashingQueue, slowHash } from '../../../apps/server/src/slow-hashing.ts';
import { inputHashOf } from '../../../apps/server/src/trpc/input-hash.ts';

/** Whether the event loop came round, so that others were served, before the work was done. */
async function servesOthersDuring(work: () => Promise<unknown>): Promise<boolean> {
  let turns = 0;
  let isDone = false;
  const count = () => {
    turns++;
    if (!isDone) setImmediate(count);
  };
  const done = work().then(() => (isDone = true));
  setImmediate(count);
  await done;
  return turns > 0;
}

describe('others are served while', () => {
  test.each<[string, () => Promise<unknown>]>([
    ['a password is hashed', () => passwordHash('slow river under moss')],
    ['a password is checked against none', () => isPassword('slow river under moss', null, 'strangers')],
    ['a secret of a command is hashed for the log', () => slowHash('slow river under moss', 'salt')],
    [
      'a command with a secret is hashed for the log',
      () => inputHashOf({ deep: [{ password: 'slow river under moss' }] }, 'salt'),
    ],
    [
      'an odd password is judged, which takes long',
      () => requireUncommon('e3a4@s5$1!0oil7t+2z%e3a4@s5$1!0oil7t+2z%').catch(() => undefined),
    ],
  ])('%s', async (_, work) => {
    await work();
    expect(await servesOthersDuring(work)).toBe(true);
  });
});

describe('the queue of slow hashing', () => {
  /** Work that is done when it is told. */
  const held = () => {
    let open = (): void => {};
    const opened = new Promise<void>((resolve) => (open = resolve));
    return { work: () => opened, let: () => open() };
  };

  test('works on two at a time, and takes who is known before strangers', async () => {
    const queue = new HashingQueue();
    const order: string[] = [];
    const first = held();
    const all = ['stranger 1', 'stranger 2', 'stranger 3', 'known 1', 'stranger 4', 'known 2'].map((name) =>
      queue.take(name.startsWith('known') ? 'known' : 'strangers', async () => {
        order.push(name);
        await first.work();
      }),
    );
    await new Promise((resolve) => setImmediate(resolve));
    expect(order).toEqual(['stranger 1', 'stranger 2']);
    first.let();
    await Promise.all(all);
    expect(order).toEqual(['stranger 1', 'stranger 2', 'known 1', 'known 2', 'stranger 3', 'stranger 4']);
  });

  test('refuses strangers when thirty wait, and still takes who is known', async () => {
    const queue = new HashingQueue();
    const gate = held();
    const waiting = Array.from({ length: 32 }, () => queue.take('strangers', gate.work));
    await expect(queue.take('strangers', gate.work)).rejects.toMatchObject({ code: 'sign-ins-busy' });
    const known = queue.take('known', gate.work);
    gate.let();
    await expect(Promise.all([...waiting, known])).resolves.toHaveLength(33);
  });
});
