import { InputError } from '../kernel/input.ts';
import type { TaxonRank } from './traits.ts';

/** A scientific name taken apart, under the names of Darwin Core terms. */
export interface ParsedName {
  /** Genus, epithets and cultivar without the author, as it is shown: "Asclepias tuberosa 'Hello Yellow'". */
  scientificName: string;
  /** As written, empty when there is none. */
  scientificNameAuthorship: string;
  genus: string;
  specificEpithet: string | null;
  infraspecificEpithet: string | null;
  /** Capitalised, without its single quotes. */
  cultivarEpithet: string | null;
  taxonRank: TaxonRank;
  hybrid: boolean;
}

const GENUS = /^\p{Lu}\p{Ll}+(?:-\p{Ll}+)?$/u;
const EPITHET = /^\p{Ll}[\p{Ll}-]*\p{Ll}$/u;
// The cultivar closes the name; an apostrophe inside an author's name is never followed by the end of the text.
const CULTIVAR = /\s['‘’]([\p{Lu}\p{N}][^‘]*?)['’]$/u;
const MARKERS: Readonly<Record<string, { rank: TaxonRank; shown: string }>> = {
  subsp: { rank: 'subspecies', shown: 'subsp.' },
  ssp: { rank: 'subspecies', shown: 'subsp.' },
  var: { rank: 'variety', shown: 'var.' },
  f: { rank: 'form', shown: 'f.' },
  fo: { rank: 'form', shown: 'f.' },
  forma: { rank: 'form', shown: 'f.' },
};
// Words in lower case that stand between authors: "Nutt. ex Sims" has no epithet "ex", and "L. f. ex Aiton" is no form.
const AUTHOR_WORDS = new Set([
  'ex',
  'et',
  'in',
  'de',
  'del',
  'den',
  'der',
  'di',
  'du',
  'la',
  'le',
  'van',
  'von',
  'non',
  'emend',
]);

const isEpithet = (word: string | undefined): word is string =>
  word !== undefined && EPITHET.test(word) && !AUTHOR_WORDS.has(word);

interface Infraspecific {
  rank: TaxonRank;
  shown: string;
  epithet: string;
  authorship: string[];
}

// Takes "subsp. x", "var. x" or "f. x" out of the words behind the species; what precedes it is the species' author.
function infraspecificIn(words: string[]): Infraspecific | null {
  for (let at = words.length - 2; at >= 0; at -= 1) {
    const marker = MARKERS[words[at]?.replace(/\.$/, '') ?? ''];
    const epithet = words[at + 1];
    if (marker !== undefined && isEpithet(epithet)) {
      return { ...marker, epithet, authorship: words.slice(at + 2) };
    }
  }
  return null;
}

/**
 * Takes a botanical name apart: genus, hybrid sign, epithets, author, and a cultivar in single quotes at its end
 * (ICNCP: capitalised, no "cv."). The author kept is that of the lowest rank, and none with a cultivar. "Genus sp." is read as the
 * genus. Throws InputError when the text does not begin with a genus, or reads like a common name.
 */
export function parseScientificName(text: string, argument = 'scientificName'): ParsedName {
  const spaced = typeof text === 'string' ? text.trim().replace(/×\s*/g, '× ').replace(/\s+/g, ' ') : '';
  const cultivarEpithet = CULTIVAR.exec(` ${spaced}`)?.[1]?.trim() ?? null;
  const words = spaced.replace(CULTIVAR, '').split(' ');
  const isSign = (word: string | undefined) => word === '×' || word === 'x' || word === 'X';
  let hybrid = false;
  let genusSign = '';
  if (isSign(words[0])) {
    hybrid = true;
    genusSign = '×';
    words.shift();
  }
  const genus = words.shift();
  if (genus === undefined || !GENUS.test(genus)) {
    throw new InputError(argument, 'must begin with a genus, such as Asclepias tuberosa L.', { value: String(text) });
  }
  let sign = '';
  if (isSign(words[0]) && isEpithet(words[1])) {
    hybrid = true;
    sign = '×';
    words.shift();
  }
  if (words[0] === 'sp.' || words[0] === 'spp.') words.shift();
  const specificEpithet = isEpithet(words[0]) ? (words.shift() ?? null) : null;
  const infraspecific = specificEpithet === null ? null : infraspecificIn(words);
  const authorship = infraspecific === null ? words : infraspecific.authorship;
  const shown = [
    `${genusSign}${genus}`,
    specificEpithet === null ? '' : `${sign}${specificEpithet}`,
    infraspecific === null ? '' : `${infraspecific.shown} ${infraspecific.epithet}`,
    cultivarEpithet === null ? '' : `'${cultivarEpithet}'`,
  ];
  const botanicalRank = infraspecific?.rank ?? (specificEpithet === null ? 'genus' : 'species');
  return {
    scientificName: shown.filter((part) => part !== '').join(' '),
    scientificNameAuthorship: cultivarEpithet === null ? authorship.join(' ') : '',
    genus,
    specificEpithet,
    infraspecificEpithet: infraspecific?.epithet ?? null,
    cultivarEpithet,
    taxonRank: cultivarEpithet === null ? botanicalRank : 'cultivar',
    hybrid,
  };
}
