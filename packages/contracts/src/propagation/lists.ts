import { BATCH_UNITS, PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, page, text, units } from '../fields.ts';

export const BATCH_STATES = ['open', 'closed', 'all'] as const;
export const BATCH_SORTS = ['plantBy', 'startedOn', 'readyOn', 'plant', 'code', 'units', 'stageDue'] as const;

export const listBatches = z.strictObject({
  state: z._default(z.enum(BATCH_STATES), 'open'),
  method: z.optional(z.nullable(z.enum(PROPAGATION_METHODS))),
  plantId: z.optional(z.nullable(id)),
  placeId: z.optional(z.nullable(id)),
  /** Part of a code or of any of the plant's names. */
  text: z._default(text(z.trim(), z.maxLength(120)), ''),
  sort: z._default(z.enum(BATCH_SORTS), 'plantBy'),
  descending: z._default(z.boolean(), false),
  ...page,
});

export const readBatch = z.strictObject({ batchId: id });

/** What a batch of a plant can be started with; `versionId` asks for a version of a protocol that is no longer the current one. */
export const readStartChoices = z.strictObject({ plantId: id, versionId: z.optional(z.nullable(id)) });

/** What learning suggests of a batch, or of a start under a protocol that is only thought of. */
export const suggestForecast = z
  .strictObject({
    batchId: z.optional(z.nullable(id)),
    protocolVersionId: z.optional(z.nullable(id)),
    unit: z.optional(z.nullable(z.enum(BATCH_UNITS))),
    units: z.optional(z.nullable(units)),
    seedsSown: z.optional(z.nullable(units)),
    startedOn: z.optional(z.nullable(calendarDate)),
    /** Left out, those of the protocol. */
    containerId: z.optional(z.nullable(id)),
    targetContainerId: z.optional(z.nullable(id)),
    stagePosition: z.optional(z.nullable(z.int().check(z.gte(0), z.lte(10)))),
  })
  .check(
    z.refine((input) => (input.batchId == null) !== (input.protocolVersionId == null), {
      path: ['batchId'],
      params: { problem: 'required' },
    }),
    z.refine((input) => input.protocolVersionId == null || input.units != null, {
      path: ['units'],
      params: { problem: 'required' },
    }),
  );
