import * as z from 'zod/mini';
import { id } from '../fields.ts';

/** Items that may stand in for the one asked for; the smaller penalty goes first. */
export const alternatives = z._default(
  z
    .array(
      z.strictObject({ plantId: id, containerId: id, penalty: z._default(z.int().check(z.gte(1), z.lte(100)), 1) }),
    )
    .check(z.maxLength(20)),
  [],
);
