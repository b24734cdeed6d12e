// The door as a browser meets it: cookies are kept from answer to answer, and each guess comes from an address.
import { randomUUID } from 'node:crypto';
import { createApp, type AppParts } from '../../apps/server/src/app.ts';
import type { TestDatabase } from './database.ts';
import { sent } from './nursery.ts';

type App = Awaited<ReturnType<typeof createApp>>;
type Answer = Awaited<ReturnType<App['inject']>>;

export const codeOf = (answer: Pick<Answer, 'json'>): string | undefined =>
  (answer.json() as { error?: { data: { code: string } } }).error?.data.code;
export const dataOf = <Data>(answer: Pick<Answer, 'json'>): Data =>
  (answer.json() as { error?: { data: { data: Data } } }).error?.data.data as Data;
export const resultOf = <Result>(answer: Pick<Answer, 'json'>): Result =>
  (answer.json() as { result: { data: Result } }).result.data;

/** One browser: what the server sets as cookies it sends back. */
export function browserOf(app: App, { address = '127.0.0.1', agent = 'tests' } = {}) {
  const jar = new Map<string, string>();
  const keep = (answer: Answer): Answer => {
    for (const { name, value } of answer.cookies as { name: string; value: string }[]) {
      if (value === '') jar.delete(name);
      else jar.set(name, value);
    }
    return answer;
  };
  const headers = () => ({
    'content-type': 'application/json',
    'user-agent': agent,
    cookie: [...jar].map(([name, value]) => `${name}=${value}`).join('; '),
  });
  return {
    jar,
    post: async (procedure: string, body: object, commandId: string = randomUUID()) =>
      keep(
        await app.inject({
          method: 'POST',
          url: `/trpc/${procedure}`,
          payload: sent(body, commandId),
          headers: headers(),
          remoteAddress: address,
        }),
      ),
    /** Several calls of one procedure in one request. */
    batch: async (procedure: string, bodies: object[]) =>
      keep(
        await app.inject({
          method: 'POST',
          url: `/trpc/${bodies.map(() => procedure).join(',')}?batch=1`,
          payload: Object.fromEntries(bodies.map((body, at) => [at, sent(body)])),
          headers: headers(),
          remoteAddress: address,
        }),
      ),
    get: async (procedure: string, input: object = {}) =>
      keep(
        await app.inject({
          method: 'GET',
          url: `/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`,
          headers: headers(),
          remoteAddress: address,
        }),
      ),
  };
}

export type Browser = ReturnType<typeof browserOf>;

/** A server over the database of a test, and a browser for each address that is asked from. */
export async function openDoor(database: Pick<TestDatabase, 'url'>, parts: Omit<AppParts, 'databaseUrl'>) {
  const app = await createApp({ databaseUrl: database.url, ...parts });
  await app.ready();
  return {
    app,
    browser: (from: { address?: string; agent?: string } = {}) => browserOf(app, from),
    close: () => app.close(),
  };
}
