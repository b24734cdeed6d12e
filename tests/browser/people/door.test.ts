// The door on a phone and at a desk: a second step set up and asked for, sessions seen and ended, and what is said when it is shut.
import { generateSync } from 'otplib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { passwordHash } from '../../../apps/server/src/features/people/passwords/hashing.ts';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type Journey, openJourney } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { overflowOf } from '../screens/visit.ts';

const password = 'slow river under moss';
const SIZES = [
  ['a phone', { width: 390, height: 844 }, 'en'],
  ['a desk', { width: 1366, height: 768 }, 'en'],
  ['a narrow phone in Spanish', { width: 320, height: 740 }, 'es'],
] as const;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  journey = await openJourney(database, nursery);
  await nursery.sql('UPDATE person SET password_hash = $1', [await passwordHash(password)]);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const later = (seconds: number) =>
  nursery.clock.set(new Date(nursery.clock.now().getTime() + seconds * 1000).toISOString());
const codeNow = (secret: string) => generateSync({ secret, epoch: Math.floor(nursery.clock.now().getTime() / 1000) });

const WORDS = {
  en: {
    email: 'Email address',
    password: 'Password',
    signIn: 'Sign in',
    code: 'Code from your app, or a recovery code',
    asked: 'Enter the 6 digits from your app, or a recovery code.',
    wait: /Too many tries\. Wait 1 second/,
    setUp: 'Set it up',
    yours: 'Your password',
    next: 'Next',
    firstCode: '6-digit code from the app',
    turnOn: 'Turn it on',
    kept: 'I kept them',
    turnOff: 'Turn it off',
    anyCode: 'Code from the app, or a recovery code',
    unknown: 'End Unknown device',
    ended: 'That device is signed out.',
    here: 'this device',
    only: 'You’re signed in nowhere else.',
    isOff: 'The second step is off.',
  },
  es: {
    email: 'Correo electrónico',
    password: 'Contraseña',
    signIn: 'Entrar',
    code: 'Código de su aplicación o de recuperación',
    asked: 'Escriba los 6 dígitos de su aplicación o un código de recuperación.',
    wait: /Demasiados intentos\. Espere 1 segundo/,
    setUp: 'Activarlo',
    yours: 'Su contraseña',
    next: 'Siguiente',
    firstCode: 'Código de 6 dígitos de la aplicación',
    turnOn: 'Activar',
    kept: 'Ya los guardé',
    turnOff: 'Desactivarlo',
    anyCode: 'Código de la aplicación o de recuperación',
    unknown: 'Cerrar Aparato desconocido',
    ended: 'Ese aparato ya no tiene la sesión abierta.',
    here: 'este aparato',
    only: 'No tiene la sesión abierta en ningún otro lugar.',
    isOff: 'El segundo paso está desactivado.',
  },
};

describe.each(SIZES)('on %s', (_, size, language) => {
  const say = WORDS[language];
  const sound = async (page: Page, name: string) => {
    expect({ name, overflow: await overflowOf(page), violations: await violationsOn(page) }).toEqual({
      name,
      overflow: [],
      violations: [],
    });
  };
  const field = (page: Page, label: string) =>
    page
      .locator('input')
      .and(page.getByLabel(label, { exact: true }))
      .last();
  const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).last().click();
  const said = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();

  it('a second step is set up, asked for and turned off, and another session is ended', async () => {
    later(2 * 86_400);
    await nursery.sql('DELETE FROM token');
    const elsewhere = await journey.open('owner', size);
    await elsewhere.goto(`${journey.address}/settings/own`);
    const page = await journey.open(null, size);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.addInitScript((chosen) => localStorage.setItem('rootclock.language', chosen), language);
    await page.goto(`${journey.address}/sign-in?next=/settings/own`);
    const enter = async () => {
      await field(page, say.email).fill(nursery.people.owner.email);
      await field(page, say.password).fill(password);
      await press(page, say.signIn);
    };
    await enter();

    await press(page, say.setUp);
    await field(page, say.yours).fill(password);
    await press(page, say.next);
    const secret = ((await page.locator('.key-text').textContent()) ?? '').replaceAll(' ', '');
    await page.waitForFunction(() => document.querySelector<HTMLImageElement>('.key-picture')?.complete);
    await sound(page, 'second-step-key');
    await field(page, say.firstCode).fill(codeNow(secret));
    await press(page, say.turnOn);
    await page.locator('.recovery-codes').waitFor();
    const codes = await page.locator('.recovery-codes li').allTextContents();
    expect(codes).toHaveLength(10);
    await sound(page, 'recovery-codes');
    await press(page, say.kept);
    await page.getByRole('button', { name: say.turnOff, exact: true }).waitFor();

    await said(page, say.here);
    await sound(page, 'own-page');
    await press(page, say.unknown);
    await said(page, say.ended);
    await said(page, say.only);
    await elsewhere.reload();
    await elsewhere.waitForURL(/\/sign-in/);

    // On a device that is not known, guesses are slowed down, and the right password asks for the code.
    later(60);
    await page.context().clearCookies();
    await page.goto(`${journey.address}/sign-in?next=/settings/own`);
    await enter();
    await said(page, say.asked);
    await sound(page, 'sign-in-code');
    for (let guess = 0; guess < 6; guess++) {
      await field(page, say.code).fill('999999' === codeNow(secret) ? '888888' : '999999');
      const answered = page.waitForResponse(/people\.signIn/);
      await press(page, say.signIn);
      await answered;
    }
    await said(page, say.wait);
    await sound(page, 'sign-in-waits');
    later(60);
    await field(page, say.code).fill(codeNow(secret));
    await press(page, say.signIn);
    await page.getByRole('button', { name: say.turnOff, exact: true }).waitFor();
    await press(page, say.turnOff);
    await field(page, say.yours).fill(password);
    await field(page, say.anyCode).fill(codes[0] ?? '');
    await sound(page, 'second-step-off');
    await press(page, say.turnOff);
    await said(page, say.isOff);
    await page.getByRole('button', { name: say.setUp, exact: true }).waitFor();
  }, 300_000);
});
