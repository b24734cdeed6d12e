import * as z from 'zod/mini';
import { shortText, text } from '../fields.ts';

/** Two keyboards may write one address in different characters; capitals are the database's to judge. */
const email = text(z.trim(), z.normalize('NFC'), z.maxLength(254), z.regex(/^[^\s@]+@[^\s@]+$/));
/** Long rather than intricate: length is what resists guessing. */
const password = text(z.minLength(10), z.maxLength(200));

/** One that was set before, whatever may be set today. */
const knownPassword = text(z.minLength(1), z.maxLength(200));
/** Six digits of an app, or a recovery code. */
const code = text(z.trim(), z.minLength(6), z.maxLength(40));

export const signIn = z.strictObject({ email, password: knownPassword, code: z.optional(code) });
export const createFirstOwner = z.strictObject({
  nurseryName: shortText,
  zone: text(z.minLength(1), z.maxLength(64)),
  name: shortText,
  email,
  password,
});
export { code as codeField, email as emailField, knownPassword as knownPasswordField, password as passwordField };
