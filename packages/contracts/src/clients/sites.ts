import { BED_MOISTURE, BED_SUN } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, longText, optionalText, shortText } from '../fields.ts';

const site = {
  siteId: id,
  name: shortText,
  address: z._default(longText, ''),
  /** The region whose native plants and planting windows count here, such as the postal code of a state. */
  region: optionalText,
  livestockNear: z._default(z.boolean(), false),
  note: z._default(longText, ''),
};

export const addSite = z.strictObject({ ...site, clientId: id });

export const editSite = z.strictObject({ ...site, ...asRead });

const bed = {
  bedId: id,
  name: shortText,
  areaCm2: z._default(z.nullable(z.int().check(z.gte(1), z.lte(2_000_000_000))), null),
  sun: z._default(z.nullable(z.enum(BED_SUN)), null),
  moisture: z._default(z.nullable(z.enum(BED_MOISTURE)), null),
  note: z._default(longText, ''),
};

export const addBed = z.strictObject({ ...bed, siteId: id });

export const editBed = z.strictObject({ ...bed, ...asRead });
