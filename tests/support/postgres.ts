// The PostgreSQL server that all tests of one run share: in a container where a Docker engine answers, else embedded.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbedded } from '@rootclock/server/db/embedded';

export interface TestServer {
  url(database: string): string;
  stop(): Promise<void>;
}

async function inContainer(): Promise<TestServer> {
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  const container = await new PostgreSqlContainer('postgres:18')
    .withCommand(['postgres', '-c', 'max_connections=200', '-c', 'fsync=off'])
    .start();
  return {
    url: (database) =>
      `postgresql://${container.getUsername()}:${container.getPassword()}@${container.getHost()}:${container.getPort()}/${database}`,
    stop: async () => void (await container.stop()),
  };
}

async function embedded(): Promise<TestServer> {
  const folder = mkdtempSync(path.join(tmpdir(), 'rootclock-tests-'));
  let pid: number | undefined;
  // A run that is broken off may not come to its teardown; the database must not outlive it.
  const breakOff = () => {
    if (pid !== undefined) process.kill(pid, 'SIGQUIT');
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  };
  process.once('exit', breakOff);
  // Without a listener a signal ends the process with no 'exit' in between.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(1));
  const server = await startEmbedded(folder, { durable: false });
  pid = server.pid;
  return {
    url: server.url,
    async stop() {
      process.off('exit', breakOff);
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export async function startTestServer(): Promise<TestServer> {
  const { getContainerRuntimeClient } = await import('testcontainers');
  const dockerAnswers = await getContainerRuntimeClient().then(
    () => true,
    () => false,
  );
  return dockerAnswers ? inContainer() : embedded();
}
