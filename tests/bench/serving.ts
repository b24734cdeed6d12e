// Starting the server's process, and asking it as a browser does: over kept connections, signed in by cookie.
import { spawn } from 'node:child_process';
import { Agent, request } from 'node:http';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';

export interface Serving {
  /** Answers the body of a read; throws when the answer is an error. */
  read(procedure: string, input: object): Promise<string>;
  /** Sends a command; throws when it was not acknowledged. */
  send(procedure: string, sent: { commandId: string; body: object }): Promise<void>;
  stop(): Promise<void>;
}

export const readPath = (procedure: string, input: object) =>
  `/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`;
export const cookieOf = (session: string) => `rootclock_session=${session}`;

export async function serve(databaseUrl: string, session: string): Promise<Serving> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', path.join(repositoryRoot, 'tests/bench/server.ts'), databaseUrl],
    {
      cwd: repositoryRoot,
      stdio: ['ignore', 2, 2, 'ipc'],
    },
  );
  const ended = new Promise<void>((resolve) => void child.once('exit', () => resolve()));
  const port = await new Promise<number>((resolve, reject) => {
    child.once('message', (message) => resolve(Number(message)));
    void ended.then(() => reject(new Error('the server ended before it answered')));
  });
  const agent = new Agent({ keepAlive: true, maxSockets: 64 });

  const ask = (method: 'GET' | 'POST', target: string, body?: string) =>
    new Promise<string>((resolve, reject) => {
      const headers = {
        cookie: cookieOf(session),
        ...(body === undefined
          ? {}
          : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }),
      };
      const asked = request({ host: '127.0.0.1', port, method, path: target, agent, headers }, (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk: Buffer) => chunks.push(chunk));
        answer.on('end', () => {
          const text = Buffer.concat(chunks).toString('utf8');
          if (answer.statusCode === 200) resolve(text);
          else reject(new Error(`${target.split('?')[0]} answered ${answer.statusCode}: ${text.slice(0, 500)}`));
        });
        answer.on('error', reject);
      });
      asked.on('error', reject);
      asked.end(body);
    });

  return {
    read: (procedure, input) => ask('GET', readPath(procedure, input)),
    send: async (procedure, sent) => void (await ask('POST', `/trpc/${procedure}`, JSON.stringify(sent))),
    stop: async () => {
      agent.destroy();
      child.disconnect();
      await ended;
    },
  };
}
