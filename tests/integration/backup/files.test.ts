import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { loadBackup } from '@rootclock/server/db/backup/load';
import { verifyBackup } from '@rootclock/server/db/backup/verify';
import { migrate, type Migration, readMigrations } from '@rootclock/server/db/migrate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { asOwner, openScratch, rowsOf, type Scratch, take } from '../../support/backup.ts';

// Whatever else a file's row says, these are the columns that a backup reads.
const withFiles: Migration[] = [
  ...readMigrations(),
  {
    name: '29990101000000_files_for_this_test',
    checksum: 'files',
    sql: `CREATE TABLE IF NOT EXISTS file (nursery_id uuid NOT NULL REFERENCES nursery (id), sha256 text NOT NULL, kind text,
      media_type text, bytes int, width int, height int, view_sha256 text, view_bytes int, thumb_sha256 text,
      thumb_bytes int, stored_at timestamptz, emptied_at timestamptz)`,
  },
];
const nurseryId = '0a0a0a0a-0000-4000-8000-000000000001';
const hashOf = (word: string) => createHash('sha256').update(word).digest('hex');
const placeOf = (word: string) => path.join(nurseryId, hashOf(word).slice(0, 2), hashOf(word).slice(2));

let scratch: Scratch;
let source: string;
beforeEach(async () => {
  scratch = await openScratch();
  source = await scratch.emptyDatabase();
  await migrate(source, withFiles);
  await asOwner(source, (client) =>
    client.query(
      `INSERT INTO nursery (id, name, zone, season_end_on) VALUES ($1, 'Kept', 'America/Chicago', '2027-10-31')`,
      [nurseryId],
    ),
  );
});
afterEach(() => scratch.close());

function lay(word: string): void {
  const file = path.join(scratch.filesFolder, placeOf(word));
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, word);
}

const name = (whole: string, view: string, thumb: string, emptiedAt: string | null = null) =>
  asOwner(source, (client) =>
    client.query(
      `INSERT INTO file (nursery_id, sha256, kind, media_type, bytes, width, height, view_sha256, view_bytes, thumb_sha256, thumb_bytes, stored_at, emptied_at)
       VALUES ($1, $2, 'photo', 'image/jpeg', 5, 5, 5, $3, 4, $4, 5, '2026-05-20', $5)`,
      [nurseryId, hashOf(whole), hashOf(view), hashOf(thumb), emptiedAt],
    ),
  );

describe('the files that rows name', () => {
  test('come back as they were, and nothing else of the folder', async () => {
    for (const word of ['whole', 'view', 'thumb', 'stray', 'blanked']) lay(word);
    await name('whole', 'view', 'thumb');
    await name('blanked', 'blanked view', 'blanked thumb', '2026-05-21');
    const { missingFiles } = await take(source, scratch);
    expect(missingFiles).toEqual([]);

    const [target, folder] = [await scratch.emptyDatabase(), path.join(scratch.folder, 'back')];
    const manifest = await verifyBackup(scratch.file);
    await loadBackup({ ownerUrl: target, file: scratch.file, manifest, filesFolder: folder, migrations: withFiles });
    for (const word of ['whole', 'view', 'thumb']) {
      expect(readFileSync(path.join(folder, placeOf(word)), 'utf8')).toBe(word);
      expect(statSync(path.join(folder, placeOf(word))).mode & 0o777).toBe(0o600);
    }
    for (const word of ['stray', 'blanked']) expect(existsSync(path.join(folder, placeOf(word)))).toBe(false);
    expect((await rowsOf(target)).file).toEqual((await rowsOf(source)).file);
  });

  test('are told where they are missing, and the rest is kept all the same', async () => {
    for (const word of ['whole', 'thumb']) lay(word);
    await name('whole', 'view', 'thumb');
    const { missingFiles, members } = await take(source, scratch);
    expect(missingFiles).toEqual([placeOf('view')]);
    expect(members.filter((member) => member.name.startsWith('files/'))).toHaveLength(2);
    expect((await verifyBackup(scratch.file)).missingFiles).toEqual(missingFiles);
  });
});
