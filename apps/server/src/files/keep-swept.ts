import type { FastifyInstance } from 'fastify';
import type { Database } from '../db/pool.ts';
import { SETTLED_AFTER_MS, sweepFiles } from '../features/files/letting-go.ts';
import { later } from '../later.ts';
import type { FileStore } from './file-store.ts';

interface SweepParts {
  database: Database;
  files: FileStore;
  clock: () => Date;
}

/** Sweeps the store at the start and once a day, for as long as the server runs. */
export function keepFilesSwept(app: FastifyInstance, { database, files, clock }: SweepParts): void {
  let callOff = () => {};
  let sweeping: Promise<void> = Promise.resolve();
  const sweep = () => {
    sweeping = sweepFiles({ database, files }, clock()).catch((error: unknown) =>
      app.log.warn({ err: error }, 'the store of files could not be swept, and will be tomorrow'),
    );
    callOff = later(SETTLED_AFTER_MS, sweep);
  };
  app.addHook('onReady', async () => sweep());
  app.addHook('preClose', async () => {
    callOff();
    await sweeping;
  });
}
