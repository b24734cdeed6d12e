import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { readArchive, writeArchive } from '@rootclock/server/db/backup/archive';
import { type Manifest, MANIFEST } from '@rootclock/server/db/backup/manifest';
import { verifyBackup } from '@rootclock/server/db/backup/verify';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { asOwner, bringBack, openScratch, rowsOf, type Scratch, take } from '../../support/backup.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery } from '../../support/nursery.ts';

let source: TestDatabase;
let whole: Scratch;
let bytes: Buffer;
beforeAll(async () => {
  source = await createDatabase();
  const nursery = await openNursery(source);
  await nursery.close();
  whole = await openScratch();
  await take(source.ownerUrl, whole);
  bytes = readFileSync(whole.file);
});
afterAll(async () => {
  await whole.close();
  await source.drop();
});

let scratch: Scratch;
beforeEach(async () => {
  scratch = await openScratch();
});
afterEach(() => scratch.close());

const notWhole = /is damaged, or is no backup of Rootclock: .*Nothing was changed/s;

describe('a file that is no whole backup is refused', () => {
  test('whichever byte of it was altered', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: bytes.length - 1 }),
        fc.integer({ min: 1, max: 255 }),
        async (at, by) => {
          const altered = Buffer.from(bytes);
          altered.writeUInt8(altered.readUInt8(at) ^ by, at);
          fc.pre(unpacked(altered)?.equals(gunzipSync(bytes)) !== true);
          writeFileSync(scratch.file, altered);
          await expect(verifyBackup(scratch.file)).rejects.toThrow(notWhole);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('unless it still unpacks to the very same', async () => {
    const packedAt = bytes.readUInt32LE(4);
    const altered = Buffer.from(bytes);
    altered.writeUInt32LE(packedAt + 1, 4);
    expect(unpacked(altered)).toEqual(gunzipSync(bytes));
    writeFileSync(scratch.file, altered);
    await expect(verifyBackup(scratch.file)).resolves.toMatchObject({ version: 1 });
  });

  test('wherever it was cut off', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: bytes.length - 1 }), async (length) => {
        writeFileSync(scratch.file, bytes.subarray(0, length));
        await expect(verifyBackup(scratch.file)).rejects.toThrow(notWhole);
      }),
      { numRuns: 40, examples: [[0], [1], [bytes.length - 1], [bytes.length - 8]] },
    );
  });

  test('though it was packed again after it was altered', async () => {
    const plain = gunzipSync(bytes);
    const at = plain.indexOf('America/Chicago');
    expect(at).toBeGreaterThan(0);
    plain.write('America/Phoenix', at);
    writeFileSync(scratch.file, gzipSync(plain));
    await expect(verifyBackup(scratch.file)).rejects.toThrow(/does not hold what its manifest lists/);
  });

  test.each([
    ['text', Buffer.from('a letter to a friend')],
    ['packed text', gzipSync('a letter to a friend')],
    ['an archive of nothing', gzipSync(Buffer.alloc(1024))],
  ])('being %s', async (_, content) => {
    writeFileSync(scratch.file, content);
    await expect(verifyBackup(scratch.file)).rejects.toThrow(notWhole);
  });

  test.each(['files/../../etc/passwd', 'files//etc/passwd', 'tables/../x/00001.csv', 'letter.txt'])(
    'holding %s',
    async (name) => {
      await rewrite(scratch.file, (manifest) => manifest, [[name, Buffer.from('x')]]);
      await expect(verifyBackup(scratch.file)).rejects.toThrow(`it holds ${name}`);
    },
  );

  test('and neither database nor folder is touched', async () => {
    writeFileSync(scratch.file, bytes.subarray(0, -20));
    const target = await scratch.emptyDatabase();
    await expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(notWhole);
    expect(await rowsOf(target)).toEqual({});
    expect(existsSync(scratch.filesFolder)).toBe(false);
  });
});

describe('a backup is refused', () => {
  test('when a newer format wrote it', async () => {
    await rewrite(scratch.file, (manifest) => ({ ...manifest, version: 2 }));
    await expect(verifyBackup(scratch.file)).rejects.toThrow(/has format 2; this copy of Rootclock reads up to 1/);
  });

  test('when it has a migration that is not known here', async () => {
    const newer = { name: '29991231235959_stock_later', checksum: 'x' };
    await rewrite(scratch.file, ({ migrations, ...rest }) => ({ ...rest, migrations: [...migrations, newer] }));
    const target = await scratch.emptyDatabase();
    await expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(
      /from a newer Rootclock.*29991231235959/,
    );
    expect(await rowsOf(target)).toEqual({});
  });

  test('by a database with a nursery, named', async () => {
    copyFileSync(whole.file, scratch.file);
    const before = await rowsOf(source.ownerUrl);
    await expect(bringBack(source.ownerUrl, scratch, scratch.filesFolder)).rejects.toThrow(
      'There is a nursery here already (Test nursery).',
    );
    expect(await rowsOf(source.ownerUrl)).toEqual(before);
  });

  test('while another program is connected to the database', async () => {
    copyFileSync(whole.file, scratch.file);
    const target = await scratch.emptyDatabase();
    await asOwner(target, () =>
      expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(/another program is connected/),
    );
    expect(await rowsOf(target)).toEqual({});
  });

  test('with not one row loaded, when its rows break a rule of their table', async () => {
    const member = 'tables/membership/00001.csv';
    await rewrite(
      scratch.file,
      (manifest) => manifest,
      [],
      (name, content) => (name === member ? Buffer.from(content.toString().replaceAll(',crew,', ',chief,')) : content),
    );
    const target = await scratch.emptyDatabase();
    await expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(/membership_role_check/);
    const { _prisma_migrations: _, ...rows } = await rowsOf(target);
    expect(Object.entries(rows).filter(([, each]) => each.length > 0)).toEqual([]);
  });

  test('with not one row loaded, when a row names another that is not there', async () => {
    const without = 'tables/person/00001.csv';
    const headOnly = (content: Buffer) => content.subarray(0, content.indexOf('\n') + 1);
    const noPersons = (manifest: Manifest) => ({
      ...manifest,
      tables: manifest.tables.map((table) => (table.name === 'person' ? { ...table, rows: 0 } : table)),
    });
    await rewrite(scratch.file, noPersons, [], (name, content) => (name === without ? headOnly(content) : content));
    const target = await scratch.emptyDatabase();
    await expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(/membership_person_id_fkey/);
    expect((await rowsOf(target)).nursery).toEqual([]);
  });
});

/** What a packed file holds; null where it cannot be unpacked. Some bits of one say nothing of it: its system, and those that only fill its last byte. */
function unpacked(packed: Buffer): Buffer | null {
  try {
    return gunzipSync(packed);
  } catch {
    return null;
  }
}

/** Writes the whole backup anew with a manifest that fits what was changed: what only somebody who knows the format could do. */
async function rewrite(
  file: string,
  change: (manifest: Manifest) => object,
  more: [string, Buffer][] = [],
  changeMember: (name: string, content: Buffer) => Buffer = (_, content) => content,
): Promise<void> {
  const archive = writeArchive(file, new Date(0));
  const members: Manifest['members'] = [];
  for await (const { name, bytes: content } of readArchive(whole.file)) {
    if (name !== MANIFEST) {
      members.push(await archive.add(name, changeMember(name, content)));
      continue;
    }
    for (const [extra, held] of more) members.push(await archive.add(extra, held));
    const manifest = change({ ...(JSON.parse(content.toString()) as Manifest), members });
    await archive.add(MANIFEST, Buffer.from(JSON.stringify(manifest)));
  }
  await archive.close();
}
