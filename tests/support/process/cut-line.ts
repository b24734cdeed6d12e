// A line to the database that breaks when it is told to: between the server's driver and PostgreSQL.
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

/** When the line breaks: as the n-th packet of the server is about to go out, or as soon as it has gone out. */
export interface Break {
  atPacket: number;
  isSent: boolean;
}

/** What becomes of connections: passed on, broken as soon as they come, or taken and left without a word. */
export type Bearing = 'passes' | 'refuses' | 'hangs';

export interface Line {
  /** The address of the database as it is reached by this line. */
  url: string;
  /** Lets every connection break at this packet, counted from now over all of them. */
  breakAt(at: Break): void;
  /** Whether it broke since `breakAt`. */
  isBroken(): boolean;
  /** From now on; what is open hangs too, and what hung is cut when the line does anything else again. */
  behave(bearing: Bearing): void;
  /** Where new connections lead. */
  leadTo(databaseUrl: string): void;
  /** How many connections were tried so far. */
  tried(): number;
  /** Cuts what is open now. */
  cut(): void;
  /** Cuts what is open and takes no connection any more. */
  close(): Promise<void>;
}

export async function openLine(databaseUrl: string): Promise<Line> {
  let target = new URL(databaseUrl);
  let bearing: Bearing = 'passes';
  let tried = 0;
  const open = new Set<Socket>();
  let next: Break | null = null;
  let packets = 0;
  let broken = false;
  const cut = () => {
    for (const socket of open) socket.destroy();
  };

  const listener = createServer((near) => {
    tried += 1;
    if (bearing !== 'passes') {
      near.on('error', () => {});
      if (bearing === 'refuses') return void near.resetAndDestroy();
      open.add(near);
      return void near.on('close', () => open.delete(near)).resume();
    }
    const far = connect(Number(target.port), target.hostname);
    for (const [socket, other] of [
      [near, far],
      [far, near],
    ] as const) {
      open.add(socket);
      socket.on('error', () => {});
      socket.on('close', () => {
        open.delete(socket);
        other.destroy();
      });
    }
    far.on('data', (bytes) => void (bearing === 'hangs' || near.write(bytes)));
    near.on('data', (bytes) => {
      if (bearing === 'hangs') return;
      packets += 1;
      if (next?.atPacket !== packets) return void far.write(bytes);
      broken = true;
      if (next.isSent) far.write(bytes, cut);
      else cut();
    });
  });
  await new Promise<void>((resolve) => listener.listen(0, '127.0.0.1', resolve));
  const url = new URL(databaseUrl);
  url.hostname = '127.0.0.1';
  url.port = String((listener.address() as AddressInfo).port);
  return {
    url: url.href,
    breakAt: (at) => {
      next = at;
      packets = 0;
      broken = false;
    },
    isBroken: () => broken,
    behave: (wanted) => {
      if (bearing === 'hangs' || wanted === 'refuses') cut();
      bearing = wanted;
    },
    leadTo: (address) => void (target = new URL(address)),
    tried: () => tried,
    cut,
    close: () =>
      new Promise((resolve) => {
        listener.close(() => resolve());
        cut();
      }),
  };
}
