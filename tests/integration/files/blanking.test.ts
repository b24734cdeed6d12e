// A client who asked to be forgotten: what was photographed at their sites is gone, from the rows and from the store.
import { randomUUID } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createRunner } from '../../../apps/server/src/db/runner.ts';
import { blankClient } from '../../../apps/server/src/features/gardens/clients/commands/blank-client.ts';
import { sweepFiles } from '../../../apps/server/src/features/files/letting-go.ts';
import { foreseeRoll, replan, rollDay } from '../../../apps/server/src/features/replan.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { drawing } from '../../support/pictures.ts';
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

const photo = (seed: number) => drawing(seed, { width: 600, height: 400 }).jpeg().toBuffer();
async function add(seed: number, subject: (typeof grounds)['lot' | 'site'] = grounds.site) {
  const attachmentId = randomUUID();
  await nursery
    .as('crew')
    .files.addPhoto(sent({ attachmentId, subject, caption: 'Behind the house', bytes: await photo(seed) }));
  return attachmentId;
}
const blank = () => nursery.as('owner').gardens.blankClient(sent({ clientId: grounds.clientId }));
const stored = async () => {
  const found: string[] = [];
  for await (const { nurseryId, sha256 } of nursery.files.list())
    if (nurseryId === nursery.nurseryId) found.push(sha256);
  return found;
};
const captions = () =>
  nursery.sql<{ caption: string; blanked: boolean }>(
    'SELECT caption, blanked_at IS NOT NULL AS blanked FROM attachment WHERE nursery_id = $1 ORDER BY added_at, caption',
    [nursery.nurseryId],
  );
const orphans = async () =>
  (await proofOf(database, nursery)).store?.orphans.filter((each) => each.nursery === nursery.nurseryId);

describe('a client whose data are blanked', () => {
  it('leaves neither caption nor picture, also of what was removed before', async () => {
    await add(1);
    const removed = await add(2);
    await nursery.as('crew').files.removeAttachment(sent({ attachmentId: removed }));
    expect(await stored()).toHaveLength(6);
    await blank();
    expect(await captions()).toEqual([
      { caption: '', blanked: true },
      { caption: '', blanked: true },
    ]);
    expect(await stored()).toEqual([]);
    expect(await nursery.as().files.listAttachments({ subject: grounds.site })).toEqual([]);
    expect(await refusalOf(nursery.as().files.restoreAttachment(sent({ attachmentId: removed })))).toMatchObject({
      code: 'file-blanked',
    });
    expect((await proofOf(database, nursery)).breaches).toEqual([]);
  });

  it('keeps a picture that something else shows', async () => {
    await add(3);
    await add(3, grounds.lot);
    await add(4);
    await blank();
    expect(await captions()).toEqual(
      expect.arrayContaining([
        { caption: '', blanked: true },
        { caption: 'Behind the house', blanked: false },
      ]),
    );
    expect(await stored()).toHaveLength(3);
    expect((await proofOf(database, nursery)).breaches).toEqual([]);
  });

  it('gets no new photos', async () => {
    await blank();
    expect(await refusalOf(add(5))).toMatchObject({ code: 'client-blanked' });
  });

  it('takes nothing away from a picture that comes anew somewhere else', async () => {
    await add(6);
    await blank();
    await add(6, grounds.lot);
    expect(await stored()).toHaveLength(3);
    expect((await proofOf(database, nursery)).breaches).toEqual([]);
  });

  it('takes nothing away from a photo that is added at the same time', async () => {
    const bytes = await photo(7);
    for (let round = 0; round < 8; round += 1) {
      const clientId = randomUUID();
      const siteId = randomUUID();
      await nursery.as().clients.addClient(sent({ clientId, name: 'Alder Lane' }));
      await nursery.as().clients.addSite(sent({ siteId, clientId, name: 'Yard' }));
      const at = (subject: { kind: 'site' | 'lot'; id: string }) =>
        nursery.as('crew').files.addPhoto(sent({ attachmentId: randomUUID(), subject, bytes }));
      await at({ kind: 'site', id: siteId });
      await Promise.all([nursery.as('owner').gardens.blankClient(sent({ clientId })), at(grounds.lot)]);
      expect((await proofOf(database, nursery)).breaches).toEqual([]);
    }
  });
});

describe('a server that ends between the blanking and its store', () => {
  const aDay = 24 * 60 * 60 * 1000;
  const later = () => new Date(Date.now() + aDay + 60_000);

  it('leaves pictures that check names, and the next sweep takes out', async () => {
    await add(8);
    await add(9, grounds.lot);
    // A runner that takes nothing out of the store is one that was ended as soon as its command had committed.
    const { app, files, clock, people } = nursery;
    const ended = createRunner({ database: app, files, replan, rollDay, foreseeRoll, clock: clock.now });
    await ended.run(blankClient, people.owner, randomUUID(), { clientId: grounds.clientId }, 'a hash');
    expect(await stored()).toHaveLength(6);
    expect(await orphans()).toHaveLength(3);
    expect((await proofOf(database, nursery)).breaches).toEqual([]);

    await sweepFiles({ database: app, files }, new Date());
    expect(await stored()).toHaveLength(6);
    await sweepFiles({ database: app, files }, later());
    expect(await stored()).toHaveLength(3);
    expect(await orphans()).toEqual([]);
    expect((await proofOf(database, nursery)).breaches).toEqual([]);
  });

  it('has nothing swept of a nursery that is not in its database', async () => {
    const elsewhere = randomUUID();
    const sha256 = await nursery.files.put(elsewhere, await photo(10));
    await sweepFiles({ database: nursery.app, files: nursery.files }, later());
    expect(await nursery.files.size(elsewhere, sha256)).not.toBeNull();
  });
});

describe('check', () => {
  it('names what the store has lost, cut short or changed', async () => {
    await add(11);
    await add(12);
    await add(13, grounds.lot);
    const [lost = '', short = '', changed = ''] = (await stored()).sort();
    const { nurseryId, files, filesFolder } = nursery;
    const placeOf = (hash: string) => path.join(filesFolder, nurseryId, hash.slice(0, 2), hash.slice(2));
    await files.remove(nurseryId, lost);
    const whole = await readFile(placeOf(changed));
    await writeFile(placeOf(short), (await readFile(placeOf(short))).subarray(1));
    await writeFile(placeOf(changed), Buffer.from(whole).fill(0, 10, 20));

    const told = async (rehash: boolean) =>
      (await proofOf(database, nursery, rehash)).breaches.map(({ what }) => what.replace(/\d+ bytes/, 'fewer bytes'));
    const quick = [
      `${lost} is not in the store`,
      expect.stringMatching(new RegExp(`^${short} has fewer bytes in the store`)),
    ];
    expect(await told(false)).toEqual(quick);
    expect(await told(true)).toEqual([...quick, `${changed} holds something else than its name says`]);
  });
});
