/** How often a stream of changes says that it lives, and its session is looked at again. */
export const LIVE_BEAT_MS = 10_000;

/** What a stream tells: a change names the features to read again, a beat only how far the nursery is. */
export interface LiveWord {
  /** The nursery's version, which grows by one with every entry. */
  version: number;
  /** A beat carries none. */
  features?: readonly string[];
}
