// What entries of stock keep so that they can be taken back, each purpose with its schema.
import { COUNT_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { purposeOf } from '../ledger/purpose.ts';
import { closing } from '../treatments/store.ts';

/** How the places that it closed had been closed before. */
export const treatment = purposeOf(['treat'], 'treatment', z.object({ closings: z.array(closing) }));

const readiness = z.object({ readyOn: z.nullable(z.string()), rootCheckedOn: z.nullable(z.string()) });

/** What a check of root balls changed, lot by lot. */
export const rootBallCheck = purposeOf(
  ['observe'],
  'root-ball-check',
  z.object({ checks: z.array(z.object({ lotId: z.string(), before: readiness, after: readiness })) }),
);

export const placeClosing = purposeOf(
  ['observe'],
  'place-closing',
  z.object({ place: z.literal('closed'), untilAt: z.string() }),
);

export const placeOpening = purposeOf(
  ['observe'],
  'place-opening',
  z.object({ place: z.literal('opened'), wasUntilAt: z.nullable(z.string()) }),
);

/** A count of one lot at one place, and how exactly its units were known before. */
export const lotCount = purposeOf(
  ['count'],
  'lot-count',
  z.object({
    placeId: z.string(),
    expectedUnits: z.number(),
    countedUnits: z.number(),
    countKind: z.enum(COUNT_KINDS),
    before: z.object({ countKind: z.enum(COUNT_KINDS) }),
  }),
);

/** How exactly the units of each lot were known before a spring count. */
export const springCount = purposeOf(
  ['count'],
  'spring-count',
  z.object({ countKinds: z.record(z.string(), z.enum(COUNT_KINDS)) }),
);

/** Which plant each lot, batch and source was said to be before. */
export const reIdentification = purposeOf(
  ['re-identify'],
  're-identification',
  z.object({
    toPlantId: z.string(),
    from: z.array(z.object({ kind: z.enum(['lot', 'batch', 'source']), id: z.string(), plantId: z.string() })),
  }),
);
