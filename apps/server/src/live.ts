import type { FastifyInstance, FastifyReply } from 'fastify';
import { type Change, Changes } from './db/changes.ts';
import type { Caller } from './trpc/operation.ts';

const BEAT_MS = 15_000;

/**
 * Tells browsers what changed, within a second or so of the commit: one LISTEN connection a process, one stream of server-sent events a tab.
 * A change carries no data but the nursery's version and the features touched; the browser reads again under row security.
 * The beat carries the newest version, so that a missed change is noticed.
 */
export class Live {
  private readonly streams = new Map<string, Set<FastifyReply>>();
  private readonly newest = new Map<string, number>();
  private readonly changes: Changes;
  private beat: NodeJS.Timeout | null = null;

  constructor(databaseUrl: string, app: FastifyInstance) {
    this.changes = new Changes(databaseUrl, (change) => this.pass(change), (error) => app.log.warn({ err: error }, 'the live connection was lost'));
  }

  async start(): Promise<void> {
    await this.changes.start();
    this.beat = setInterval(() => this.sendBeats(), BEAT_MS);
    this.beat.unref();
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
    if (this.beat) clearInterval(this.beat);
    for (const streams of this.streams.values()) for (const reply of streams) reply.raw.end();
    await this.changes.stop();
  }
}

const event = (name: string, data: object) => `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
