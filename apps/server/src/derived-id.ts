import { createHash } from 'node:crypto';

/** 128 bits written as a UUID (RFC 9562): random ones are of version 4, those of a form of one's own of version 8. */
export const uuidOf = (hex: string, version: 4 | 8): string =>
  `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${version}${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;

/**
 * The id that follows from words, the same each time. It is found again in every database that ever held it, so it may never change: that
 * is why it is not a UUID of version 5, whose SHA-1 of the same words is another id.
 */
export const derivedId = (...words: readonly string[]): string =>
  uuidOf(createHash('sha256').update(words.join('/')).digest('hex'), 8);
