// Two hundred pictures of all three kinds, and what they leave behind.
import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { drawing } from '../../support/pictures.ts';
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

const MANY = 200;

function encoded(seed: number): Promise<Buffer> {
  const size = { width: 120 + ((seed * 37) % 500), height: 90 + ((seed * 53) % 400) };
  if (seed % 3 === 0) return drawing(seed, size).jpeg().toBuffer();
  if (seed % 3 === 1)
    return drawing(seed, { ...size, channels: seed % 2 === 0 ? 3 : 4 })
      .png()
      .toBuffer();
  return drawing(seed, size).webp().toBuffer();
}

const SUBJECTS = ['lot', 'batch', 'place', 'plant', 'site'] as const;

it.each(SUBJECTS.map((kind, at) => [MANY / SUBJECTS.length, kind, at] as const))(
  'takes %i pictures of a %s, and every file is as its row says',
  async (many, kind, at) => {
    const subject = grounds[kind];
    for (let count = 1; count <= many; count += 1) {
      const bytes = await encoded(at * many + count);
      await nursery.as('crew').files.addPhoto(sent({ attachmentId: randomUUID(), subject, bytes }));
    }
    expect(await nursery.as().files.listAttachments({ subject })).toHaveLength(many);
    const { breaches, store } = await proofOf(database, nursery);
    expect({ breaches, store }).toEqual({ breaches: [], store: { looked: 3 * many * (at + 1), orphans: [] } });
  },
);

it('makes of them what their rows say, in kind and size', async () => {
  const rows = await nursery.sql<{
    sha256: string;
    view: string;
    thumb: string;
    width: number;
    height: number;
    type: string;
  }>(
    'SELECT sha256, view_sha256 AS view, thumb_sha256 AS thumb, width, height, media_type AS type FROM file ORDER BY stored_at, id',
  );
  expect(rows.length).toBe(MANY);
  for (const { sha256, view, thumb, width, height, type } of rows.filter((_, at) => at % 7 === 0)) {
    const told = async (hash: string) => sharp((await nursery.files.read(nursery.nurseryId, hash)) ?? '').metadata();
    const [full, larger, smaller] = await Promise.all([told(sha256), told(view), told(thumb)]);
    expect(`image/${full.format}`).toBe(type);
    expect([full.width, full.height]).toEqual([width, height]);
    expect([larger.format, larger.width]).toEqual(['webp', width]);
    expect([smaller.format, Math.max(smaller.width, smaller.height)]).toEqual([
      'webp',
      Math.min(480, Math.max(width, height)),
    ]);
  }
});
