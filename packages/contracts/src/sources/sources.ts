import { SEED_STORAGES, SOURCE_KINDS, SOURCE_ORIGINS } from '@rootclock/domain';
import * as z from 'zod/mini';
import {
  asRead,
  calendarDate,
  grams,
  id,
  longText,
  optionalText,
  page,
  purity,
  roughDay,
  seedsPerGram,
  text,
} from '../fields.ts';

/** What is known of where propagules came from; nearly all of it may be unknown. */
const provenance = {
  kind: z.enum(SOURCE_KINDS),
  /** Where they grew or grow, in words: a county, a remnant, a seed house's own field. */
  provenance: z._default(text(z.trim(), z.maxLength(500)), ''),
  seedZone: optionalText,
  origin: z._default(z.enum(SOURCE_ORIGINS), 'unknown'),
  /** The day of gathering, or only its month, season or year. */
  gathered: z.optional(z.nullable(roughDay)),
  collector: optionalText,
  permit: optionalText,
  vendor: optionalText,
  vendorLot: optionalText,
  pesticideStatement: optionalText,
  /** The lot that gives the cuttings, seed or divisions. */
  motherLotId: z.optional(z.nullable(id)),
  note: z._default(longText, ''),
};

/** What is known of its seed; read only of kinds that hold seed. */
const seed = {
  /** As it was gathered, with chaff and pods. */
  rawGrams: z.optional(z.nullable(grams)),
  /** Clean or bought seed. Of a new source it goes into the store at once. */
  cleanedGrams: z.optional(z.nullable(grams)),
  /** Pure seed by weight. */
  purity: z.optional(z.nullable(purity)),
  seedsPerGram: z.optional(z.nullable(seedsPerGram)),
  /** It loses its life within days and is sown as it is gathered. */
  sowFresh: z._default(z.boolean(), false),
  /** It dies when it dries. */
  neverDry: z._default(z.boolean(), false),
  storage: z.optional(z.nullable(z.enum(SEED_STORAGES))),
  storedOn: z.optional(z.nullable(calendarDate)),
};

export const addSource = z.strictObject({ sourceId: id, plantId: id, ...provenance, ...seed });
/** The whole source anew; its plant is changed only by re-identifying it, with all that came of it. */
export const editSource = z.strictObject({ sourceId: id, ...provenance, ...seed, ...asRead });
export const retireSource = z.strictObject({ sourceId: id });
export const restoreSource = z.strictObject({ sourceId: id });

export const SOURCE_SORTS = ['code', 'plant', 'gathered', 'grams', 'units'] as const;

export const listSources = z.strictObject({
  ...page,
  /** Part of a code, a plant's name, a provenance, a vendor or a collector. */
  text: z._default(text(z.trim(), z.maxLength(120)), ''),
  plantId: z.optional(z.nullable(id)),
  kind: z.optional(z.nullable(z.enum(SOURCE_KINDS))),
  state: z._default(z.enum(['open', 'retired', 'all']), 'open'),
  sort: z._default(z.enum(SOURCE_SORTS), 'code'),
  descending: z._default(z.boolean(), false),
});

export const readSource = z.strictObject({ sourceId: id });
