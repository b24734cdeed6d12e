import { ROLES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, shortText, text } from '../fields.ts';
import { emailField, passwordField } from './sign-in.ts';

const role = z.enum(ROLES);

export const listPeople = z.strictObject({});
export const addPerson = z.strictObject({ personId: id, name: shortText, email: emailField, role, password: passwordField });
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
export const changeOwnPassword = z.strictObject({ currentPassword: text(z.minLength(1), z.maxLength(200)), password: passwordField });
