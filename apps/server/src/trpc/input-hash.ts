import { createHash } from 'node:crypto';
import { slowHash } from '../slow-hashing.ts';

/** Of a body as it was sent, the same whatever order its fields were written in. Salted with the id of its command. */
export async function inputHashOf(value: unknown, salt: string): Promise<string> {
  return createHash('sha256')
    .update(await canonical(value, salt))
    .digest('hex');
}

/** Fields that are hashed slowly first: the log of commands must not be a way to guess passwords at speed. */
const SECRETS = new Set(['password', 'currentPassword']);

/** JSON with sorted keys: the order in which a browser wrote the fields is no content. A file counts by its own hash. */
async function canonical(value: unknown, salt: string): Promise<string> {
  if (value instanceof Uint8Array) return `sha256:${createHash('sha256').update(value).digest('hex')}`;
  if (Array.isArray(value)) return `[${(await Promise.all(value.map((each) => canonical(each, salt)))).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const entries = Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1));
    const fields = entries.map(
      async ([key, v]) =>
        `${JSON.stringify(key)}:${await canonical(SECRETS.has(key) && typeof v === 'string' ? await slowHash(v, salt) : v, salt)}`,
    );
    return `{${(await Promise.all(fields)).join(',')}}`;
  }
  return JSON.stringify(value ?? null);
}
