/** What a file says of itself with its first bytes, whatever its name or its sender call it. */
export type ToldKind = 'jpeg' | 'png' | 'webp' | 'heic' | 'pdf' | 'other';

const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs', 'mif1', 'msf1']);
const text = (bytes: Uint8Array, from: number, to: number) => Buffer.from(bytes.subarray(from, to)).toString('latin1');
const begins = (bytes: Uint8Array, ...start: number[]) => start.every((each, at) => bytes[at] === each);

export function toldKind(bytes: Uint8Array): ToldKind {
  if (begins(bytes, 0xff, 0xd8, 0xff)) return 'jpeg';
  if (begins(bytes, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP') return 'webp';
  if (text(bytes, 0, 5) === '%PDF-') return 'pdf';
  // The box of brands stands first in all files of that family, of which AVIF is one that is no HEIC.
  if (text(bytes, 4, 8) === 'ftyp' && HEIC_BRANDS.has(text(bytes, 8, 12)) && !text(bytes, 8, 64).includes('avif'))
    return 'heic';
  return 'other';
}
