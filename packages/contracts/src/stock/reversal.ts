import * as z from 'zod/mini';
import { id, longText } from '../fields.ts';

/** Takes an entry back as a whole, once. */
export const reverseEntry = z.strictObject({ entryId: id, note: z._default(longText, '') });
