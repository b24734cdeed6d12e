import { requireText } from '../kernel/input.ts';
import { compareText } from '../kernel/text.ts';
import { editDistance } from './edit-distance.ts';
import { nameKey } from './name-key.ts';
import { parseScientificName } from './scientific-name.ts';

/** A plant as far as its names go. The scientific name may carry its author. */
export interface NamedPlant {
  id: string;
  scientificName: string;
  synonyms?: readonly string[];
  vernacularNames?: readonly string[];
}

export interface NearMiss {
  plantId: string;
  /** The name that comes near, as the plant carries it. */
  name: string;
  /** Letters that differ. */
  distance: number;
}

/**
 * What a written name means. `exact`: the accepted scientific name. `synonym`, `common`: another name that only one plant
 * has. `ambiguous`: a name of several plants, or a genus, with all it could mean. `unknown`: no plant's, with near misses.
 */
export type NameMatch =
  | { kind: 'exact'; plantId: string }
  | { kind: 'synonym'; plantId: string; name: string }
  | { kind: 'common'; plantId: string; name: string }
  | { kind: 'ambiguous'; plantIds: string[] }
  | { kind: 'unknown'; nearMisses: NearMiss[] };

const MOST_NEAR_MISSES = 5;
const NAME_KINDS = ['exact', 'synonym', 'common'] as const;

interface KeyedName {
  plantId: string;
  kind: (typeof NAME_KINDS)[number];
  name: string;
  keys: string[];
}

// How growers write: all in capitals or all small. A genus begins with a capital and an epithet does not; an author keeps its own letters.
function inBotanicalCase(text: string): string {
  const [genus = '', epithet = '', ...rest] = text.trim().split(/\s+/);
  const isShouted = /^\p{Lu}{3,}/u.test(epithet);
  return [
    `${genus.slice(0, 1).toUpperCase()}${genus.slice(1).toLowerCase()}`,
    isShouted ? epithet.toLowerCase() : epithet,
    ...rest,
  ]
    .join(' ')
    .trim();
}

// A scientific name is found with and without its author; a genus by itself is no name of a species.
function scientificKeys(name: string): string[] {
  const keys = [nameKey(name)];
  try {
    const parsed = parseScientificName(inBotanicalCase(name));
    if (parsed.taxonRank !== 'genus') keys.push(nameKey(parsed.scientificName));
  } catch {
    // A name that cannot be taken apart is still found as it is written.
  }
  return [...new Set(keys)];
}

function keyedNames(plants: readonly NamedPlant[]): KeyedName[] {
  return plants.flatMap(({ id, scientificName, synonyms = [], vernacularNames = [] }) => [
    { plantId: id, kind: 'exact' as const, name: scientificName, keys: scientificKeys(scientificName) },
    ...synonyms.map((name) => ({ plantId: id, kind: 'synonym' as const, name, keys: scientificKeys(name) })),
    ...vernacularNames.map((name) => ({ plantId: id, kind: 'common' as const, name, keys: [nameKey(name)] })),
  ]);
}

const distinctIds = (names: readonly KeyedName[]) => [...new Set(names.map((name) => name.plantId))].sort(compareText);

// Longer names leave more room for a slip; in a short one every letter counts.
const mostSlips = (key: string) => (key.length <= 4 ? 1 : key.length <= 8 ? 2 : 3);

function nearMissesOf(key: string, names: readonly KeyedName[]): NearMiss[] {
  const found = names.flatMap(({ plantId, kind, name, keys }) =>
    keys.flatMap((other) => {
      const distance = editDistance(key, other, mostSlips(key));
      return distance === null ? [] : [{ plantId, name, distance, place: NAME_KINDS.indexOf(kind) }];
    }),
  );
  found.sort(
    (a, b) =>
      a.distance - b.distance || a.place - b.place || compareText(a.name, b.name) || compareText(a.plantId, b.plantId),
  );
  const firstOfPlant = found.filter((miss, at) => found.findIndex((other) => other.plantId === miss.plantId) === at);
  return firstOfPlant.slice(0, MOST_NEAR_MISSES).map(({ plantId, name, distance }) => ({ plantId, name, distance }));
}

/**
 * Which plant a written name means. Case, diacritics, quotes, hybrid signs and the author do not matter. An accepted name
 * goes before a synonym, a synonym before a common name, since only the scientific name settles which plant is meant; a
 * name that several plants share within its kind is ambiguous and never guessed, and a genus by itself always is.
 * Near misses differ by at most 3 letters (2 in names up to 8 letters, 1 up to 4), nearest first, at most five plants.
 * The order of `plants` does not matter. Throws InputError for an empty text.
 */
export function matchName(text: string, plants: readonly NamedPlant[]): NameMatch {
  requireText('text', text);
  const names = keyedNames(plants);
  const asWritten = nameKey(text);
  const wanted = scientificKeys(text);
  for (const kind of NAME_KINDS) {
    // An author is only cut off when a scientific name is sought: "Green milkweed L." is not the common name "green".
    const keys = kind === 'common' ? [asWritten] : wanted;
    const hits = names.filter(
      (name) => name.kind === kind && name.keys.some((key) => key !== '' && keys.includes(key)),
    );
    const [plantId, ...others] = distinctIds(hits);
    if (plantId === undefined) continue;
    if (others.length > 0) return { kind: 'ambiguous', plantIds: [plantId, ...others] };
    const name = hits.map((hit) => hit.name).sort(compareText)[0] ?? text;
    return kind === 'exact' ? { kind, plantId } : { kind, plantId, name };
  }
  const genus = asWritten.replace(/ spp?$/, '');
  const ofGenus = names.filter(({ kind, keys }) => kind === 'exact' && keys.some((key) => key.startsWith(`${genus} `)));
  if (genus !== '' && !genus.includes(' ') && ofGenus.length > 0)
    return { kind: 'ambiguous', plantIds: distinctIds(ofGenus) };
  return { kind: 'unknown', nearMisses: asWritten === '' ? [] : nearMissesOf(asWritten, names) };
}
