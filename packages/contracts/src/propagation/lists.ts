import { PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { id, page } from '../fields.ts';

export const BATCH_STATES = ['open', 'closed', 'all'] as const;
export const BATCH_SORTS = ['plantBy', 'startedOn', 'readyOn', 'plant', 'code', 'units'] as const;

export const listBatches = z.strictObject({
  state: z._default(z.enum(BATCH_STATES), 'open'),
  method: z.optional(z.nullable(z.enum(PROPAGATION_METHODS))),
  plantId: z.optional(z.nullable(id)),
  placeId: z.optional(z.nullable(id)),
  /** Part of a code or of any of the plant's names. */
  text: z._default(z.string().check(z.trim(), z.maxLength(120)), ''),
  sort: z._default(z.enum(BATCH_SORTS), 'plantBy'),
  descending: z._default(z.boolean(), false),
  ...page,
});

export const readBatch = z.strictObject({ batchId: id });
