/**
 * The last reads of whoever works on this device, so that a page opens where the line does not. The server is always asked first; what is
 * kept is shown where it gives no answer, or not soon, with the instant at which it was read. Each answer is kept under its person and
 * under the build of the app that read it, since another build may expect another form. All that touches the world is handed in.
 */
import { notifyManager, type QueryFunctionContext, type Query } from '@tanstack/react-query';
import { readFailure } from '../api/failure.ts';

export interface KeptRead {
  data: unknown;
  /** Milliseconds of the server's clock, as far as this device knows it. */
  at: number;
}

type Key = [personId: string, build: string, hash: string];

export interface KeptReadsParts {
  records: {
    get(key: Key): Promise<KeptRead | undefined>;
    put(key: Key, read: KeptRead): Promise<void>;
    clear(): Promise<void>;
    /** Takes out all that was read before this instant. */
    sweep(before: number): Promise<void>;
  };
  /** Whose reads are kept; null for nobody's. Told at once, also to a page that is about to go. */
  owner: { read(): string | null; write(personId: string | null): void };
  build: string;
  now: () => number;
  after: (ms: number, run: () => void) => void;
  /** Something is shown that was read before. */
  onShown: () => void;
}

const DAY_MS = 24 * 60 * 60 * 1000;
/** What is older is a record of the nursery no more. */
const OLDEST_MS = 7 * DAY_MS;
/** A line that has brought no answer by then is not waited for before something is shown. */
const PATIENCE_MS = 3_000;

/** Secrets, sessions and who else works here are never kept; who one is oneself is what every page begins with. */
export function mayBeKept(queryKey: readonly unknown[]): boolean {
  const [path] = queryKey;
  const [feature, name] = Array.isArray(path) ? (path as unknown[]) : [];
  return typeof feature === 'string' && (feature !== 'people' || name === 'me');
}

export class KeptReads {
  /** Reads on show that no answer has replaced yet. */
  private readonly shown = new Set<string>();
  private readonly underWay = new Map<string, Promise<unknown>>();

  constructor(private readonly parts: KeptReadsParts) {}

  readonly isShown = (hash: string): boolean => this.shown.has(hash);

  /** From now on reads are kept for this person. What was kept for another goes; what they have read already is kept. */
  ownedBy(personId: string, readAlready: readonly Query[]): void {
    if (this.parts.owner.read() === personId) return;
    this.forget();
    this.parts.owner.write(personId);
    for (const query of readAlready) this.keep(query, query.state.data);
  }

  /** Nobody is to find here what was read. With a person only where it is theirs. */
  forget(personId = this.parts.owner.read()): void {
    if (this.parts.owner.read() !== personId) return;
    this.parts.owner.write(null);
    this.shown.clear();
    void this.parts.records.clear().catch(() => {});
  }

  async sweep(): Promise<void> {
    await this.parts.records.sweep(this.parts.now() - OLDEST_MS).catch(() => {});
  }

  /** Stands before every read, as the cache's way to ask. */
  readonly persister = async <Data, Context extends QueryFunctionContext>(
    ask: (context: Context) => Data | Promise<Data>,
    context: Context,
    query: Query,
  ): Promise<Data> => {
    const { queryHash } = query;
    const asked = (this.underWay.get(queryHash) as Promise<Data> | undefined) ?? this.ask(query, () => ask(context));
    if (query.state.data !== undefined || !mayBeKept(query.queryKey)) return asked;
    const early = await Promise.race([
      asked.then(
        (data) => ({ data }),
        (error: unknown) => ({ error }),
      ),
      new Promise<null>((resolve) => this.parts.after(PATIENCE_MS, () => resolve(null))),
    ]);
    if (early !== null && 'data' in early) return early.data;
    if (early !== null && readFailure(early.error).class !== 'retry') throw early.error;
    const kept = await this.find(queryHash);
    if (!kept) return asked;
    this.show(query, kept.at);
    return kept.data as Data;
  };

  /** Asks the server, and keeps what it answers for whoever it was asked for. */
  private ask<Data>(query: Query, ask: () => Data | Promise<Data>): Promise<Data> {
    const owner = this.parts.owner.read();
    const asked = (async () => {
      try {
        const data = await ask();
        this.shown.delete(query.queryHash);
        if (owner !== null && owner === this.parts.owner.read()) this.keep(query, data);
        return data;
      } finally {
        this.underWay.delete(query.queryHash);
      }
    })();
    this.underWay.set(query.queryHash, asked);
    return asked;
  }

  private keep(query: Query, data: unknown): void {
    const owner = this.parts.owner.read();
    if (owner === null || data === undefined || !mayBeKept(query.queryKey)) return;
    // A device that has no room, or keeps nothing, goes without.
    void this.parts.records
      .put([owner, this.parts.build, query.queryHash], { data, at: this.parts.now() })
      .catch(() => {});
  }

  private async find(hash: string): Promise<KeptRead | null> {
    const owner = this.parts.owner.read();
    if (owner === null) return null;
    const kept = await this.parts.records.get([owner, this.parts.build, hash]).catch(() => undefined);
    return kept && kept.at > this.parts.now() - OLDEST_MS ? kept : null;
  }

  private show(query: Query, at: number): void {
    this.shown.add(query.queryHash);
    this.parts.onShown();
    // Taking an answer sets the instant of the cache; only after that can it be put right.
    notifyManager.schedule(() => {
      query.setState({ dataUpdatedAt: at, isInvalidated: true });
      // Asked once more at once, or still: a line that stumbled only once brings what is new.
      void query.fetch().catch(() => {});
    });
  }
}
