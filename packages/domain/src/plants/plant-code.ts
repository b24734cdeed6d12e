import { InputError } from '../kernel/input.ts';
import { withoutDiacritics } from './name-key.ts';
import { parseScientificName } from './scientific-name.ts';

const CLASH_LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * The code people write on labels: two letters of the genus and two of the species in capitals ('ASTU'), 'SP' for a plant
 * known by its genus only. When it is taken, a letter follows ('ASTUA', 'ASTUB'). Throws InputError for a name that is
 * not scientific, and when all 27 codes of those four letters are taken.
 */
export function plantCode(scientificName: string, taken: ReadonlySet<string> = new Set()): string {
  const { genus, specificEpithet } = parseScientificName(scientificName);
  const two = (word: string) =>
    withoutDiacritics(word)
      .replace(/[^A-Za-z]/g, '')
      .slice(0, 2)
      .toUpperCase()
      .padEnd(2, 'X');
  const code = two(genus) + two(specificEpithet ?? 'sp');
  const free = [code, ...[...CLASH_LETTERS].map((letter) => code + letter)].find((candidate) => !taken.has(candidate));
  if (free === undefined) throw new InputError('taken', `must leave one code that begins with ${code}`, { code });
  return free;
}
