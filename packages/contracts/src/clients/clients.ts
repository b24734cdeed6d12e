import * as z from 'zod/mini';
import { asRead, id, longText, optionalText, shortText } from '../fields.ts';

const client = {
  clientId: id,
  name: shortText,
  email: optionalText,
  phone: optionalText,
  address: optionalText,
  /** Days before the plant-by day by which plants must have left for this client, who plants them later. */
  leadDays: z._default(z.int().check(z.gte(0), z.lte(366)), 0),
  note: z._default(longText, ''),
};

export const addClient = z.strictObject(client);

export const editClient = z.strictObject({ ...client, ...asRead });
