import { scrypt } from 'node:crypto';
import { promisify } from 'node:util';
import PQueue from 'p-queue';
import { refuse } from './refusal.ts';

/** Two at a time leave the other half of Node's four threads to files and names. */
const AT_ONCE = 2;
/** Beyond these a caller is turned away: it would wait for so long that it asks again meanwhile. */
const MOST_WAITING = { strangers: 30, known: 60 };

export type Asker = keyof typeof MOST_WAITING;

/**
 * Where all slow hashing of a process waits its turn. What people ask who are known, by their session or their device, comes before what
 * strangers ask, so that a flood of guesses keeps nobody waiting who works here.
 */
export class HashingQueue {
  private readonly queue = new PQueue({ concurrency: AT_ONCE });

  async take<Answer>(asker: Asker, work: () => Promise<Answer>): Promise<Answer> {
    const priority = asker === 'known' ? 1 : 0;
    if (this.queue.sizeBy({ priority }) >= MOST_WAITING[asker]) refuse('sign-ins-busy', undefined);
    return this.queue.add(work, { priority });
  }
}

/** One a process. */
export const hashingQueue = new HashingQueue();

const scryptOf = promisify<string, string, number, Buffer>(scrypt);

/** A secret as the log of commands may hold it: too slow to guess at. */
export const slowHash = (secret: string, salt: string): Promise<string> =>
  hashingQueue.take('known', async () => (await scryptOf(secret, salt, 32)).toString('hex'));
