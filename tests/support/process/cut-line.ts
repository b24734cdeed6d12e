// A line to the database that breaks when it is told to: between the server's driver and PostgreSQL.
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

/** When the line breaks: as the n-th packet of the server is about to go out, or as soon as it has gone out. */
export interface Break {
  atPacket: number;
  isSent: boolean;
}

export interface Line {
  /** The address of the database as it is reached by this line. */
  url: string;
  /** Lets every connection break at this packet, counted from now over all of them. */
  breakAt(at: Break): void;
  /** Whether it broke since `breakAt`. */
  isBroken(): boolean;
  /** Cuts what is open now. */
  cut(): void;
  /** Cuts what is open and takes no connection any more. */
  close(): Promise<void>;
}

export async function openLine(databaseUrl: string): Promise<Line> {
  const target = new URL(databaseUrl);
  const open = new Set<Socket>();
  let next: Break | null = null;
  let packets = 0;
  let broken = false;
  const cut = () => {
    for (const socket of open) socket.destroy();
  };

  const listener = createServer((near) => {
    const far = connect(Number(target.port), target.hostname);
    for (const [socket, other] of [[near, far], [far, near]] as const) {
      open.add(socket);
      socket.on('error', () => {});
      socket.on('close', () => {
        open.delete(socket);
        other.destroy();
      });
    }
    far.on('data', (bytes) => void near.write(bytes));
    near.on('data', (bytes) => {
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
    cut,
    close: () => new Promise((resolve) => {
      listener.close(() => resolve());
      cut();
    }),
  };
}
