import { randomUUID } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { type Asker, hashingQueue } from '../../../slow-hashing.ts';

/** Two keyboards may write one word in different characters; NIST SP 800-63B (5.1.1.2) has them made alike by NFKC before hashing. */
const asOne = (password: string) => password.normalize('NFKC');

export const passwordHash = (password: string, asker: Asker = 'known'): Promise<string> =>
  hashingQueue.take(asker, () => hash(asOne(password)));

// Verified against when nobody has the address, so that the time taken does not tell which addresses exist.
const nobodysHash = hash(randomUUID());

/** Whether a password is the stored one. What was stored before passwords were made alike is still opened by what was typed then. */
export function isPassword(password: string, stored: string | null, asker: Asker): Promise<boolean> {
  return hashingQueue.take(asker, async () => {
    const known = stored ?? (await nobodysHash);
    return (await verify(known, asOne(password))) || (asOne(password) !== password && (await verify(known, password)));
  });
}
