import pg from 'pg';
import { APP_ROLE } from './pool.ts';

/** What a commit told: whose nursery changed, to which version, and which features to read again. */
export interface Change {
  nursery: string;
  version: number;
  features: string[];
}

const RECONNECT_MS = 1_000;

/** The one LISTEN connection of a process. A lost connection is opened again until it is stopped. */
export class Changes {
  private client: pg.Client | null = null;
  private closed = false;

  constructor(private readonly databaseUrl: string, private readonly tell: (change: Change) => void, private readonly lost: (error: Error) => void) {}

  async start(): Promise<void> {
    const client = new pg.Client({ connectionString: this.databaseUrl, options: `-c role=${APP_ROLE}` });
    client.on('notification', (message) => this.tell(JSON.parse(message.payload ?? '{}') as Change));
    client.on('error', this.lost);
    client.on('end', () => this.startLater());
    await client.connect();
    await client.query('LISTEN rootclock');
    this.client = client;
  }

  private startLater(): void {
    if (this.closed) return;
    setTimeout(() => {
      if (!this.closed) this.start().catch(() => this.startLater());
    }, RECONNECT_MS).unref();
  }

  async stop(): Promise<void> {
    this.closed = true;
    await this.client?.end();
  }
}
