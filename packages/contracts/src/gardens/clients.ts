import * as z from 'zod/mini';
import { asRead, id, longText, optionalText, page, shortText, text } from '../fields.ts';

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
/** Takes everything personal out of a client and its sites; orders and what was planted stay. */
export const blankClient = z.strictObject({ clientId: id });

export const listClients = z.strictObject({ search: z._default(text(z.maxLength(120)), ''), ...page });
export const readClient = z.strictObject({ clientId: id });
