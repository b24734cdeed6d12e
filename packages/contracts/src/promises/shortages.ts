import * as z from 'zod/mini';
import { id, units } from '../fields.ts';

/** By how many units each of these lines may become shorter; what turns out worse is refused once more with the real numbers. */
export const acceptedShortages = z._default(z.array(z.strictObject({ lineId: id, units })).check(z.maxLength(500)), []);
