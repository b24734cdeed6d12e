import * as z from 'zod/mini';
import { id, page, text } from '../fields.ts';

/** Takes everything personal out of a client and its sites; orders and what was planted stay. */
export const blankClient = z.strictObject({ clientId: id });

export const listClients = z.strictObject({ search: z._default(text(z.maxLength(120)), ''), ...page });

export const readClient = z.strictObject({ clientId: id });

export const readSite = z.strictObject({ siteId: id });
