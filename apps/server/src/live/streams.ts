import type { Standing } from '../db/changes/listener.ts';
import type { Change, SessionEnd } from '../db/changes/told.ts';
import { Refusal } from '../refusal.ts';
import type { Caller } from '../trpc/operation.ts';
import { Stream, type Page } from './stream.ts';

/** A person has few pages in sight at once; what is more are lines that broke without a word. */
const MOST_STREAMS = 10;
/** After so many beats that a page did not take, nobody is there to take them. */
const MOST_UNTAKEN = 3;

const sessionOver = () => new Refusal('not-signed-in');

/**
 * The streams of this process, and how far each nursery is. A change carries no data but the nursery's version and the features touched;
 * the browser reads again under row security. The beat carries the newest version, so that a missed change is noticed.
 */
export class Streams {
  private readonly open = new Set<Stream>();
  private readonly newest = new Map<string, number>();
  private isStopped = false;

  /** Opens a page's stream; a person who has too many loses the oldest, which is the likeliest to have been left behind. */
  hear(caller: Caller, page: Page): Stream {
    const stream = new Stream(caller, page);
    const own = [...this.open].filter((each) => each.caller.personId === caller.personId);
    for (const oldest of own.slice(0, Math.max(0, own.length + 1 - MOST_STREAMS))) this.close(oldest);
    this.open.add(stream);
    stream.put({ version: this.newest.get(caller.nurseryId) ?? 0 });
    if (this.isStopped) stream.over();
    // The session may have ended while this stream was being opened, when it heard nothing yet.
    else void stream.look(sessionOver);
    return stream;
  }

  close(stream: Stream): void {
    this.open.delete(stream);
    stream.over();
  }

  /** How far every nursery is, after a time in which nothing was heard: pages that are behind read everything again. */
  stands(standings: Standing[]): void {
    this.newest.clear();
    for (const { nursery, version } of standings) this.newest.set(nursery, version);
    for (const stream of this.open) stream.put({ version: this.versionFor(stream) });
  }

  changed({ nursery, version, features }: Change): void {
    const streams = this.of(nursery);
    // A nursery that nobody looks at and that was not there when listening began need not be known.
    if (streams.length > 0 || this.newest.has(nursery)) this.newest.set(nursery, version);
    for (const stream of streams) stream.put({ version, features });
    // Whoever was removed or got another password hears nothing after this word.
    if (features.includes('people')) this.look(streams);
  }

  sessionEnded({ nursery, person }: SessionEnd): void {
    this.look(this.of(nursery).filter((stream) => stream.caller.personId === person));
  }

  beat(): void {
    for (const stream of this.open) {
      if (stream.beat(this.versionFor(stream)) < MOST_UNTAKEN) continue;
      this.close(stream);
      stream.page.hangUp();
    }
    this.look([...this.open]);
  }

  stop(): void {
    this.isStopped = true;
    for (const stream of this.open) this.close(stream);
  }

  private look(streams: Stream[]): void {
    for (const stream of streams) void stream.look(sessionOver);
  }

  private of(nursery: string): Stream[] {
    return [...this.open].filter((stream) => stream.caller.nurseryId === nursery);
  }

  private versionFor = (stream: Stream): number => this.newest.get(stream.caller.nurseryId) ?? 0;
}
