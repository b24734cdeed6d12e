/** What the live stream tells, and how a gap in it is healed: the nursery's version grows by one with every entry. */
import type { LiveWord } from '@rootclock/contracts';

export interface Heard {
  /** The newest version whose changes have been taken in; null before the first word. */
  version: number | null;
}

export interface Healed {
  heard: Heard;
  /** Which reads are stale: those of the features named, everything after a gap, or none. */
  stale: 'all' | readonly string[];
}

/** Takes in one word of the stream. A beat of version 0 means that the server has not heard of any entry since it started. */
export function heal(heard: Heard, word: LiveWord): Healed {
  const { version, features } = word;
  if (features === undefined) {
    if (version === 0 || version === heard.version) return { heard, stale: [] };
    return { heard: { version }, stale: heard.version === null ? [] : 'all' };
  }
  if (heard.version !== null && version <= heard.version && version !== 0) {
    // A word that comes twice, or late: its reads were marked when the gap was seen.
    return { heard, stale: features };
  }
  const isNext = heard.version === null || version === heard.version + 1;
  return { heard: { version }, stale: isNext ? features : 'all' };
}
