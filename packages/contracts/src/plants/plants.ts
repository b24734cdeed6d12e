import { HANDLING_RULES, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, monthDay, page, text } from '../fields.ts';

const scientificName = text(z.trim(), z.minLength(3), z.maxLength(160));
const otherName = text(z.trim(), z.maxLength(160));
const month = z.int().check(z.gte(1), z.lte(12));

/** What a grower says of a plant beside its name; each value changed here counts as the nursery's own. */
const traits = {
  vernacularName: otherName,
  family: text(z.trim(), z.maxLength(60)),
  rootHabit: z.enum(ROOT_HABITS),
  larvalHost: z.boolean(),
  /** Months 1 to 12; at least one must be left to grow in. */
  dormantMonths: z.array(month).check(z.maxLength(11)),
  /** The day up to which nobody writes a plant off because nothing has come up. */
  lastEmergenceMd: z.nullable(monthDay),
  yearOfFirstBloom: z.nullable(z.int().check(z.gte(1), z.lte(30))),
  nativeRegions: z.array(text(z.trim(), z.minLength(1), z.maxLength(20))).check(z.maxLength(100)),
  handling: z.array(z.enum(HANDLING_RULES)),
};

/** A plant under its scientific name, with or without the author. The server gives the code unless one is asked for. */
export const addPlant = z.strictObject({
  plantId: id,
  scientificName,
  code: z.optional(z.nullable(text(z.trim(), z.regex(/^[A-Z]{4,5}$/)))),
  vernacularName: z._default(traits.vernacularName, ''),
  family: z._default(traits.family, ''),
  rootHabit: traits.rootHabit,
  larvalHost: z._default(traits.larvalHost, false),
  dormantMonths: z._default(traits.dormantMonths, []),
  lastEmergenceMd: z._default(traits.lastEmergenceMd, null),
  yearOfFirstBloom: z._default(traits.yearOfFirstBloom, null),
  nativeRegions: z._default(traits.nativeRegions, []),
  handling: z._default(traits.handling, []),
});

/** Only what is given changes, so that two people can mend different things of one plant. */
export const editPlant = z.strictObject({
  plantId: id,
  scientificName: z.optional(scientificName),
  ...optional(traits),
  ...asRead,
});

export const retirePlant = z.strictObject({ plantId: id });
export const restorePlant = z.strictObject({ plantId: id });
export const readPlant = z.strictObject({ plantId: id });

export const PLANT_SORTS = ['name', 'units'] as const;
export const listPlants = z.strictObject({
  /** Begins a word of any of the plant's names, or its code. */
  text: z.optional(z.nullable(otherName)),
  rootHabit: z.optional(z.nullable(z.enum(ROOT_HABITS))),
  larvalHost: z.optional(z.nullable(z.boolean())),
  /** Plants the nursery no longer grows are left out unless asked for. */
  retired: z._default(z.boolean(), false),
  sort: z._default(z.enum(PLANT_SORTS), 'name'),
  descending: z._default(z.boolean(), false),
  ...page,
});

/** The reference plants, containers, rules and windows; what is there already is left as it is. */
export const loadReference = z.strictObject({});

function optional<Shape extends Record<string, z.ZodMiniType>>(shape: Shape) {
  return Object.fromEntries(Object.entries(shape).map(([key, type]) => [key, z.optional(type)])) as {
    [Key in keyof Shape]: z.ZodMiniOptional<Shape[Key]>;
  };
}
