import { randomUUID } from 'node:crypto';
import exifReader from 'exif-reader';
import sharp from 'sharp';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { drawing, samplePdf, samplePhoto } from '../../support/pictures.ts';
import { addGrounds, proofOf } from './grounds.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Omit<TestNursery, 'close'>;
let grounds: Awaited<ReturnType<typeof addGrounds>>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
});
beforeEach(async () => {
  nursery = await server.addNursery();
  grounds = await addGrounds(nursery);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const files = (role: 'owner' | 'grower' | 'crew' | 'viewer' = 'crew') => nursery.as(role).files;
const add = async (more: Partial<Parameters<ReturnType<typeof files>['addPhoto']>[0]['body']> = {}) => {
  const attachmentId = randomUUID();
  await files().addPhoto(sent({ attachmentId, subject: grounds.lot, bytes: samplePhoto, ...more }));
  return attachmentId;
};
const list = (subject: (typeof grounds)['lot' | 'site'] = grounds.lot) => files('viewer').listAttachments({ subject });
const contents = () =>
  nursery.sql<{ sha256: string; emptied: boolean }>(
    'SELECT sha256, emptied_at IS NOT NULL AS emptied FROM file WHERE nursery_id = $1',
    [nursery.nurseryId],
  );

/** What `check` finds in this nursery; others of this file leave files behind whose entry was refused. */
async function proof() {
  const { breaches, store } = await proofOf(database, nursery);
  return { breaches, orphans: store?.orphans.filter((each) => each.nursery === nursery.nurseryId) };
}

describe('a photo', () => {
  it('is listed with its caption, its day and who added it, the newest day first', async () => {
    const early = await add({ caption: 'Potted', takenOn: '2026-04-14' });
    const late = await add({ caption: 'First bloom' });
    expect(await list()).toEqual([
      {
        id: late,
        edition: 1,
        kind: 'photo',
        caption: 'First bloom',
        takenOn: '2026-05-20',
        addedBy: 'Test crew',
        width: 60,
        height: 40,
      },
      {
        id: early,
        edition: 1,
        kind: 'photo',
        caption: 'Potted',
        takenOn: '2026-04-14',
        addedBy: 'Test crew',
        width: 60,
        height: 40,
      },
    ]);
  });

  it('sent twice under one command id is one photo', async () => {
    const command = sent({ attachmentId: randomUUID(), subject: grounds.lot, bytes: samplePhoto });
    const answers = [await files().addPhoto(command), await files().addPhoto(command)];
    expect(answers[0]).toEqual(answers[1]);
    expect(await list()).toHaveLength(1);
  });

  it('of other bytes under the same command id is refused', async () => {
    const command = sent({ attachmentId: randomUUID(), subject: grounds.lot, bytes: samplePhoto });
    await files().addPhoto(command);
    const bytes = await drawing(9).jpeg().toBuffer();
    const refusal = await refusalOf(files().addPhoto({ ...command, body: { ...command.body, bytes } }));
    expect(refusal.code).toBe('command-id-reused');
  });

  it('of the same content on two subjects is stored once', async () => {
    await add();
    await add({ subject: grounds.place });
    expect(await contents()).toHaveLength(1);
    expect(await proof()).toEqual({ breaches: [], orphans: [] });
  });

  it('of a day that has not come is refused, and a camera that says so is not believed', async () => {
    expect(await refusalOf(add({ takenOn: '2026-05-21' }))).toMatchObject({ code: 'day-in-future', field: 'takenOn' });
    const exif = { IFD2: { DateTimeOriginal: '2030:01:01 00:00:00' } };
    await add({ bytes: await drawing(3).jpeg().withExif(exif).toBuffer() });
    expect((await list()).map(({ takenOn }) => takenOn)).toEqual(['2026-05-20']);
  });

  it('gets its caption changed by whoever read it last, and no other way', async () => {
    const attachmentId = await add({ caption: 'Bloom' });
    const { edition } = await files().editAttachment(
      sent({ attachmentId, caption: 'First bloom', takenOn: '2026-05-19', edition: 1 }),
    );
    expect((await list())[0]).toMatchObject({ caption: 'First bloom', takenOn: '2026-05-19', edition });
    const late = sent({ attachmentId, caption: 'Second bloom', takenOn: '2026-05-19', edition: 1 });
    expect((await refusalOf(files('grower').editAttachment(late))).code).toBe('edited-meanwhile');
  });

  it('is removed, stays where it is stored, and comes back', async () => {
    const attachmentId = await add();
    await files().removeAttachment(sent({ attachmentId }));
    expect(await list()).toEqual([]);
    expect(await contents()).toMatchObject([{ emptied: false }]);
    await files().restoreAttachment(sent({ attachmentId }));
    expect(await list()).toHaveLength(1);
  });

  it('belongs to one subject that there is', async () => {
    expect(await refusalOf(add({ subject: { kind: 'lot', id: randomUUID() } }))).toMatchObject({ code: 'not-found' });
    expect(await refusalOf(add({ subject: { kind: 'plant', id: grounds.lot.id } }))).toMatchObject({
      code: 'not-found',
    });
  });
});

describe('what a camera wrote into a photo', () => {
  const taken = '2026:05:11 10:11:12';
  it('is gone, the photo upright, and its day kept', async () => {
    const sideways = await drawing(5, { width: 800, height: 600 })
      .jpeg()
      .withMetadata({ orientation: 6 })
      .withExif({
        IFD0: { Make: 'Camera', Orientation: '6' },
        IFD2: { DateTimeOriginal: taken },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '41/1 30/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '93/1 5/1 0/1' },
      })
      .withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/"><where>41.5</where></x:xmpmeta>')
      .toBuffer();
    const before = await sharp(sideways).metadata();
    expect([before.orientation, before.width, before.xmp !== undefined]).toEqual([6, 800, true]);
    expect(exifReader(before.exif ?? Buffer.alloc(0)).GPSInfo?.GPSLatitude).toEqual([41, 30, 0]);

    await add({ bytes: sideways });
    expect(await list()).toMatchObject([{ takenOn: '2026-05-11', width: 600, height: 800 }]);
    const [row] = await nursery.sql<{ hashes: string[] }>(
      'SELECT ARRAY[sha256, view_sha256, thumb_sha256] AS hashes FROM file WHERE nursery_id = $1',
      [nursery.nurseryId],
    );
    for (const hash of row?.hashes ?? []) {
      const bytes = (await nursery.files.read(nursery.nurseryId, hash)) ?? Buffer.alloc(0);
      const { exif, xmp, iptc, orientation, width, height } = await sharp(bytes).metadata();
      expect({ exif, xmp, iptc, orientation }).toEqual({});
      expect(height).toBeGreaterThan(width);
      expect(bytes.includes('Camera')).toBe(false);
    }
  });
});

it('a paper is kept as it came', async () => {
  await files().addPaper(
    sent({ attachmentId: randomUUID(), subject: grounds.place, caption: 'Permit', bytes: samplePdf }),
  );
  const [file] = await contents();
  expect(await nursery.files.read(nursery.nurseryId, file?.sha256 ?? '')).toEqual(samplePdf);
  expect(await proof()).toEqual({ breaches: [], orphans: [] });
});
