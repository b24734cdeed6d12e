import { nameKey, parseScientificName } from '@rootclock/domain';

/**
 * The keys under which a written name may stand in the table of names: as it is written, and without the author when it reads as a
 * scientific name. Scientific names stand there under the key without their author.
 */
export function keysOf(text: string): string[] {
  return [...new Set([nameKey(text), scientificKey(text)])].filter((key) => key !== '');
}

/** The key of a scientific name without its author; of a text that is none, the key of all of it. */
export function scientificKey(text: string): string {
  try {
    return nameKey(parseScientificName(text).scientificName);
  } catch {
    // Not a scientific name: it is looked up as it stands.
    return nameKey(text);
  }
}
