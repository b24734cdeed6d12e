import {
  type HabitTrait,
  type HeightClass,
  type BedSun,
  MOST_PENALTY,
  type Standing,
  SUBSTITUTION_KINDS,
  type SubstitutionKind,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, longText, text } from '../fields.ts';

const terms = { penalty: z.int().check(z.gte(1), z.lte(MOST_PENALTY)), note: z._default(longText, '') };

export const addSubstitutionRule = z.strictObject({
  ruleId: id,
  kind: z.enum(SUBSTITUTION_KINDS),
  /** One plant or a genus; with neither the rule reaches every plant. */
  reach: z.strictObject({
    plantId: z.optional(z.nullable(id)),
    genus: z.optional(z.nullable(text(z.trim(), z.minLength(2), z.maxLength(60)))),
  }),
  ...terms,
});
/** Kind and reach stay: a rule for other plants is another rule. */
export const editSubstitutionRule = z.strictObject({ ruleId: id, ...terms, ...asRead });
/** Alternatives that lines took by it stay theirs. */
export const retireSubstitutionRule = z.strictObject({ ruleId: id });
export const listSubstitutionRules = z.strictObject({});

/** What the rules offer a line of this item for this site, among what the nursery has or grows. */
export const alternativesFor = z.strictObject({
  plantId: id,
  containerId: id,
  siteId: z._default(z.nullable(id), null),
  nativesOnly: z._default(z.boolean(), false),
});

export interface SubstitutionRuleRow {
  id: string;
  edition: number;
  kind: SubstitutionKind;
  plantId: string | null;
  scientificName: string | null;
  genus: string | null;
  penalty: number;
  standing: Standing;
  note: string;
  /** Plants of the nursery that the rule reaches. */
  plants: number;
  /** Of these, those to which a rule of the same habit says nothing, since their height, light or bloom is not told; 0 for other kinds. */
  untoldPlants: number;
}

export interface OfferedAlternative {
  plantId: string;
  scientificName: string;
  containerId: string;
  containerName: string;
  penalty: number;
  ruleId: string;
  kind: SubstitutionKind;
  /** On hand, and the cautious yield of what is growing; what of it is free or fits the line's conditions is not asked here. */
  onHandUnits: number;
  growingUnits: number;
  /** Null where the site names no region. */
  native: boolean | null;
  shared: { heightClass: HeightClass; lights: BedSun[]; bloomMonths: number[] } | null;
}

export interface OfferedAlternatives {
  /** Whether any rule reaches the plant. */
  hasRules: boolean;
  region: string | null;
  alternatives: OfferedAlternative[];
  idle: { kind: SubstitutionKind; why: 'no-region' | 'untold'; untold: HabitTrait[] }[];
  /** Scientific names of what the rules would have named and is not known to be native to the region. */
  notNative: string[];
  /** Scientific names of what was passed over, since its height, light or bloom is not told. */
  untold: string[];
}
