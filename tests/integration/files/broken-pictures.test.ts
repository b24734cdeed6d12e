// What is no whole picture is refused with a sentence, and nothing of it is kept.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { drawing, samplePdf } from '../../support/pictures.ts';
import { addGrounds, proofOf } from './grounds.ts';

let database: TestDatabase;
let nursery: TestNursery;
let grounds: Awaited<ReturnType<typeof addGrounds>>;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  grounds = await addGrounds(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const jpeg = await drawing(1).jpeg().toBuffer();
const progressive = await drawing(2).jpeg({ progressive: true }).toBuffer();
const png = await drawing(3).png().toBuffer();
const webp = await drawing(4).webp().toBuffer();
const avif = await drawing(5, { width: 80, height: 60 }).avif().toBuffer();
const tiff = await drawing(6, { width: 80, height: 60 }).tiff().toBuffer();
const gif = await drawing(7, { width: 80, height: 60 }).gif().toBuffer();

const first = (bytes: Buffer, share: number) => bytes.subarray(0, Math.floor(bytes.length * share));
const damaged = (bytes: Buffer, from: number, to: number) => Buffer.from(bytes).fill(0x5a, from, to);
const text = (words: string) => Buffer.from(words);
const box = (brand: string) =>
  Buffer.concat([Buffer.from([0, 0, 0, 24]), text(`ftyp${brand}\0\0\0\0${brand}mif1`), Buffer.alloc(400, 1)]);

/** A PNG of few bytes whose header claims far more pixels than it holds, its checksum mended. */
function claiming(width: number, height: number): Buffer {
  const bytes = Buffer.from(png);
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  bytes.writeUInt32BE(crcOf(bytes.subarray(12, 29)), 29);
  return bytes;
}
function crcOf(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const broken: [string, Buffer, string][] = [
  ['nothing at all', Buffer.alloc(0), 'not-a-picture'],
  ['a text', text('Asclepias tuberosa, first bloom'), 'not-a-picture'],
  ['a page of HTML', text('<!doctype html><script>alert(1)</script>'), 'not-a-picture'],
  ['an SVG', text('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'), 'not-a-picture'],
  ['a PDF', samplePdf, 'not-a-picture'],
  ['a GIF', gif, 'not-a-picture'],
  ['a TIFF', tiff, 'not-a-picture'],
  ['an AVIF', avif, 'not-a-picture'],
  ['a HEIC by its brand', box('heic'), 'picture-is-heic'],
  ['a HEIC by its family', box('mif1'), 'picture-is-heic'],
  ['the first bytes of a JPEG', jpeg.subarray(0, 4), 'picture-broken'],
  ['a tenth of a JPEG', first(jpeg, 0.1), 'picture-broken'],
  ['half of a JPEG', first(jpeg, 0.5), 'picture-broken'],
  ['a JPEG without its last part', first(jpeg, 0.98), 'picture-broken'],
  ['half of a progressive JPEG', first(progressive, 0.5), 'picture-broken'],
  ['a JPEG with a damaged header', damaged(jpeg, 150, 400), 'picture-broken'],
  ['half of a PNG', first(png, 0.5), 'picture-broken'],
  ['a PNG with a damaged middle', damaged(png, 5000, 5040), 'picture-broken'],
  ['half of a WebP', first(webp, 0.5), 'picture-broken'],
  ['a WebP with a damaged header', damaged(webp, 12, 40), 'picture-broken'],
  ['a PNG that claims 400 megapixels', claiming(20_000, 20_000), 'picture-too-wide'],
  ['a PNG that claims more than it holds', claiming(4000, 4000), 'picture-broken'],
];

it.each(broken)('%s is refused', async (_, bytes, code) => {
  const body = { attachmentId: randomUUID(), subject: grounds.lot, bytes };
  const refusal = await refusalOf(nursery.as('crew').files.addPhoto(sent(body)));
  expect(refusal).toMatchObject({ code });
});

it('after all that no row and no file is there', async () => {
  expect(broken.length).toBeGreaterThanOrEqual(20);
  expect(await nursery.as().files.listAttachments({ subject: grounds.lot })).toEqual([]);
  expect((await proofOf(database, nursery)).store).toEqual({ looked: 0, orphans: [] });
});

it('a paper that is no whole PDF is refused', async () => {
  for (const bytes of [jpeg, text('%PDF'), samplePdf.subarray(0, 20), Buffer.concat([text(' '), samplePdf])]) {
    const body = { attachmentId: randomUUID(), subject: grounds.lot, bytes };
    expect(await refusalOf(nursery.as('crew').files.addPaper(sent(body)))).toMatchObject({ code: 'not-a-pdf' });
  }
});
