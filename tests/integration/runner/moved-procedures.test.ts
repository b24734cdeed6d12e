// Entries that waited on a phone while procedures moved to another feature are sent under the names of before.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { onceOfGardens } from '../../../apps/server/src/features/moved.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

test('an entry is taken under the old name and answered as the same entry under the new one', async () => {
  const { gardens, clients } = nursery.as('grower');
  const entry = sent({ clientId: randomUUID(), name: 'Fen Hollow' });
  const answer = await gardens.addClient(entry);
  expect(await clients.addClient(entry)).toEqual(answer);
  expect(await gardens.readClient({ clientId: entry.body.clientId })).toMatchObject({ name: 'Fen Hollow', edition: 1 });
});

test('every procedure that once stood among gardens is still found there', () => {
  expect(Object.keys(onceOfGardens).sort()).toEqual([
    'addBed',
    'addClient',
    'addKit',
    'addKitLines',
    'addLine',
    'addOrder',
    'addSite',
    'addSubstitutionRule',
    'alternativesFor',
    'changeDay',
    'checkKit',
    'editBed',
    'editClient',
    'editKit',
    'editLine',
    'editOrder',
    'editSite',
    'editSubstitutionRule',
    'finishOrder',
    'listKits',
    'listOrders',
    'listSubstitutionRules',
    'readOrder',
    'retireKit',
    'retireSubstitutionRule',
    'withdrawLine',
  ]);
});
