import type { FastifyInstance, FastifyReply } from 'fastify';
import pg from 'pg';
import { APP_ROLE } from './db/pool.ts';
import type { Caller } from './trpc/operation.ts';

interface Change {
  nursery: string;
  version: number;
  features: string[];
}

const BEAT_MS = 15_000;
const RECONNECT_MS = 1_000;

/**
 * Tells browsers what changed, within a second or so of the commit: one LISTEN connection a process, one stream of server-sent events a tab.
 * A change carries no data but the nursery's version and the features touched; the browser reads again under row security.
 * The beat carries the newest version, so that a missed change is noticed.
 */
export class Live {
  private readonly streams = new Map<string, Set<FastifyReply>>();
  private readonly newest = new Map<string, number>();
  private client: pg.Client | null = null;
  private beat: NodeJS.Timeout | null = null;
  private closed = false;

  constructor(private readonly databaseUrl: string, private readonly app: FastifyInstance) {}

  async start(): Promise<void> {
    await this.listen();
    this.beat = setInterval(() => this.sendBeats(), BEAT_MS);
    this.beat.unref();
  }

  private async listen(): Promise<void> {
    const client = new pg.Client({ connectionString: this.databaseUrl, options: `-c role=${APP_ROLE}` });
    client.on('notification', (message) => this.pass(JSON.parse(message.payload ?? '{}') as Change));
    client.on('error', (error) => this.app.log.warn({ err: error }, 'the live connection was lost'));
    client.on('end', () => this.reconnectLater());
    await client.connect();
    await client.query('LISTEN rootclock');
    this.client = client;
  }

  private reconnectLater(): void {
    if (this.closed) return;
    setTimeout(() => {
      if (!this.closed) this.listen().catch(() => this.reconnectLater());
    }, RECONNECT_MS).unref();
  }

  open(caller: Caller, reply: FastifyReply): void {
    reply.hijack();
    reply.raw.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store', connection: 'keep-alive', 'x-accel-buffering': 'no' });
    reply.raw.write(`retry: 2000\n\n${event('beat', { version: this.newest.get(caller.nurseryId) ?? 0 })}`);
    const streams = this.streams.get(caller.nurseryId) ?? new Set();
    streams.add(reply);
    this.streams.set(caller.nurseryId, streams);
    reply.raw.on('close', () => streams.delete(reply));
  }

  private pass(change: Change): void {
    this.newest.set(change.nursery, change.version);
    for (const reply of this.streams.get(change.nursery) ?? []) reply.raw.write(event('change', { version: change.version, features: change.features }));
  }

  private sendBeats(): void {
    for (const [nursery, streams] of this.streams) for (const reply of streams) reply.raw.write(event('beat', { version: this.newest.get(nursery) ?? 0 }));
  }

  async stop(): Promise<void> {
    this.closed = true;
    if (this.beat) clearInterval(this.beat);
    for (const streams of this.streams.values()) for (const reply of streams) reply.raw.end();
    await this.client?.end();
  }
}

const event = (name: string, data: object) => `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
