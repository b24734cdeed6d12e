import { ROLES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, shortText } from '../fields.ts';
import { codeField, emailField, knownPasswordField, passwordField } from './sign-in.ts';

const role = z.enum(ROLES);

export const listPeople = z.strictObject({});
export const addPerson = z.strictObject({
  personId: id,
  name: shortText,
  email: emailField,
  role,
  password: passwordField,
});
export const changePerson = z.strictObject({
  ...asRead,
  personId: id,
  name: shortText,
  role,
  /** Whoever is ended can no longer sign in; what they entered stays theirs. */
  ended: z.boolean(),
  /** A new password, told to the person by the owner; every session of theirs ends. */
  password: z.optional(z.nullable(passwordField)),
});
/** One address a person: a new one ends the one before. */
export const createCalendarAddress = z.strictObject({});
export const revokeCalendarAddress = z.strictObject({});
export const endSession = z.strictObject({ sessionId: id });
/** All but the one that asks. */
export const endOtherSessions = z.strictObject({});
export const changeOwnPassword = z.strictObject({ currentPassword: knownPasswordField, password: passwordField });

/** A second step after the password, for owners: begun with the password, turned on with a first code, off with both. */
export const beginSecondStep = z.strictObject({ password: knownPasswordField });
export const finishSecondStep = z.strictObject({ code: codeField });
export const endSecondStep = z.strictObject({ password: knownPasswordField, code: codeField });
export const listSecondSteps = z.strictObject({});
/** Another person's, by an owner: their phone is lost. */
export const removeSecondStep = z.strictObject({ personId: id });
