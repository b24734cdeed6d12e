// The address people open, and what is said when it is taken.
import { createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import type { Config } from '../config.ts';
import { CommandFailure } from './failure.ts';

type Listening = Pick<Config, 'host' | 'port'>;

export const portTaken = ({ host, port }: Listening) =>
  new CommandFailure(
    `Port ${port} on ${host} is taken by another program. Stop that one, or choose another port: PORT=${port === 65535 ? 4311 : port + 1} npm start`,
  );

const unusable: Record<string, (settings: Listening) => string> = {
  EADDRNOTAVAIL: ({ host }) => `HOST ${host} is no address of this machine.`,
  ENOTFOUND: ({ host }) => `HOST ${host} is a name this machine does not know.`,
  EACCES: ({ port }) => `Port ${port} may not be used by this user; choose one above 1023.`,
};

/** Tries the port for a moment. Throws CommandFailure when it cannot be used. */
export function mustBeFree(settings: Listening): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') return reject(portTaken(settings));
      const words = unusable[error.code ?? '']?.(settings);
      return reject(words === undefined ? error : new CommandFailure(words));
    });
    probe.listen(settings.port, settings.host, () => probe.close(() => resolve()));
  });
}

const bracketed = (host: string) => (host.includes(':') ? `[${host}]` : host);

/** The addresses a browser can open: the public one first, and where all interfaces are served also the one that a phone nearby needs. */
export function addressesOf({ host, publicUrl }: Pick<Config, 'host' | 'publicUrl'>, port: number): string[] {
  const everywhere = host === '0.0.0.0' || host === '::';
  const nearby = Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter((each) => !each.internal && each.family === 'IPv4');
  const hosts = everywhere ? ['localhost', ...nearby.map((each) => each.address)] : [bracketed(host)];
  return [...(publicUrl ? [publicUrl.origin] : []), ...hosts.map((each) => `http://${each}:${port}`)];
}
