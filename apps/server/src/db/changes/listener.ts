import { Socket } from 'node:net';
import pg from 'pg';
import { APP_ROLE } from '../pool.ts';

/** By this name an operator finds the one connection that listens among the others. */
const NAME = 'rootclock live';

/** How far a nursery was when listening began. */
export interface Standing {
  nursery: string;
  version: number;
}

/** One connection that listens, from being made to being gone. */
export interface Listener {
  /** Settles when it listens, with how far every nursery is; rejects when it cannot be made. */
  listening: Promise<Standing[]>;
  /** Settles with the reason when nothing of it is left. Never rejects. */
  gone: Promise<Error>;
  /** Settles when the database gave a sign of life. */
  check(): Promise<unknown>;
  /** Ends it at once, in whatever state it is. */
  cut(reason: Error): void;
}

/**
 * Opens a connection that listens. The socket is our own, because the driver's way to end waits for an answer that a silent database
 * never gives.
 */
export function openListener(databaseUrl: string, hear: (payload: string) => void): Listener {
  const socket = new Socket();
  let reason: Error | null = null;
  const cut = (why: Error) => {
    reason ??= why;
    socket.destroy();
  };
  const gone = new Promise<Error>((resolve) => {
    socket.once('close', () => resolve(reason ?? new Error('the connection ended')));
  });
  const listening = (async () => {
    const client = new pg.Client({
      connectionString: databaseUrl,
      options: `-c role=${APP_ROLE}`,
      application_name: NAME,
      keepAlive: true,
      stream: () => socket,
    });
    client.on('error', cut);
    client.on('end', () => socket.destroy());
    client.on('notification', ({ payload }) => hear(payload ?? ''));
    await client.connect();
    await client.query('LISTEN rootclock');
    // Asked after LISTEN: what was committed before is in this answer, and what comes later is heard.
    const { rows } = await client.query<Standing>('SELECT nursery_id::text AS nursery, version FROM every_nursery()');
    return { client, rows };
  })();
  listening.catch(cut);
  return {
    listening: listening.then(({ rows }) => rows),
    gone,
    check: async () => (await listening).client.query('SELECT 1'),
    cut,
  };
}
