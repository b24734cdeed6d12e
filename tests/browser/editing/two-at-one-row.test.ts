import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

let clientId: string;
let field: Page;
let desk: Page;
beforeEach(async () => {
  clientId = randomUUID();
  await nursery
    .as('owner')
    .clients.addClient(sent({ clientId, name: `Fen Hollow ${clientId.slice(0, 8)}`, phone: '555 0100' }));
  field = await journey.open('grower', PHONE);
  desk = await journey.open('owner', DESK);
});

const stored = () => nursery.as('viewer').gardens.readClient({ clientId });

async function openForm(page: Page): Promise<void> {
  await page.goto(`${journey.address}/gardens/clients/${clientId}`);
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.getByRole('textbox', { name: 'Phone' }).waitFor();
}

async function save(page: Page, typed: Record<string, string>): Promise<void> {
  for (const [label, text] of Object.entries(typed)) await page.getByRole('textbox', { name: label }).fill(text);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
}

const clash = (page: Page) => page.getByRole('group', { name: 'Test owner changed this while you were typing.' });
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const isShut = (page: Page) => page.getByRole('dialog').waitFor({ state: 'detached' });

describe('of two people at one client', () => {
  beforeEach(async () => {
    await openForm(field);
    await openForm(desk);
    await save(desk, { Phone: '555 0101', Note: 'rings twice' });
    await isShut(desk);
  });

  it('the second sees both values, and keeps their own without losing what only the first changed', async () => {
    await save(field, { Phone: '555 0102' });
    await clash(field).waitFor();
    expect(await clash(field).getByRole('definition').allInnerTexts()).toEqual(['Yours\n555 0102', 'Theirs\n555 0101']);
    expect(await clash(field).getByRole('term').allInnerTexts()).toEqual(['Phone']);
    expect(await stored()).toMatchObject({ phone: '555 0101', note: 'rings twice' });
    expect(await violationsOn(field)).toEqual([]);
    await press(field, 'Keep mine');
    await isShut(field);
    expect(await stored()).toMatchObject({ phone: '555 0102', note: 'rings twice' });
  });

  it('the second takes the other’s value, and goes on from there', async () => {
    await save(field, { Phone: '555 0102', Address: '1 Fen Road' });
    await clash(field).waitFor();
    await press(field, 'Take theirs');
    await clash(field).waitFor({ state: 'detached' });
    expect(await field.getByRole('textbox', { name: 'Phone' }).inputValue()).toBe('555 0101');
    expect(await field.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('rings twice');
    expect(await field.getByRole('textbox', { name: 'Address' }).inputValue()).toBe('1 Fen Road');
    await save(field, {});
    await isShut(field);
    expect(await stored()).toMatchObject({ phone: '555 0101', note: 'rings twice', address: '1 Fen Road' });
  });

  it('the second is asked nothing where they changed something else', async () => {
    await save(field, { Address: '1 Fen Road' });
    await isShut(field);
    expect(await stored()).toMatchObject({ phone: '555 0101', note: 'rings twice', address: '1 Fen Road' });
  });
});

it('an edit that was typed without a connection opens its form with both values, and takes its own place in the outbox', async () => {
  await openForm(field);
  await field.context().setOffline(true);
  await save(field, { Phone: '555 0102' });
  await field.getByText('Kept on this device').first().waitFor();
  await field.getByRole('button', { name: 'Close' }).first().click();
  await isShut(field);
  const { edition } = await stored();
  await nursery
    .as('owner')
    .clients.editClient(sent({ clientId, name: 'Fen Hollow', phone: '555 0101', note: 'rings twice', edition }));
  await field.context().setOffline(false);
  await field.getByText('An entry was refused and is kept in the outbox.').waitFor();
  await field.goto(`${journey.address}/outbox`);
  await field.getByText('Test owner changed this while you were typing.').waitFor();
  await press(field, 'Put right');
  await clash(field).waitFor();
  expect(await clash(field).getByRole('definition').allInnerTexts()).toEqual(['Yours\n555 0102', 'Theirs\n555 0101']);
  await press(field, 'Keep mine');
  await isShut(field);
  expect(await stored()).toMatchObject({ name: 'Fen Hollow', phone: '555 0102', note: 'rings twice' });
  await field.goto(`${journey.address}/outbox`);
  await field.getByText('Everything is sent').first().waitFor();
});
