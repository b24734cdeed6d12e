import { ESTABLISHMENT_MEANS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, optionalText, seedsPerGram, text } from '../fields.ts';

const words = z.nullable(text(z.trim(), z.minLength(1), z.maxLength(500)));
const list = z.nullable(
  z.array(text(z.trim(), z.minLength(1), z.maxLength(120))).check(z.minLength(1), z.maxLength(40)),
);
const months = z.nullable(z.array(z.int().check(z.gte(1), z.lte(12))).check(z.minLength(1), z.maxLength(12)));
const amount = (most: number) => z.nullable(z.number().check(z.gte(0.01), z.lte(most)));
const range = (least: number, most: number) => {
  const bound = z.number().check(z.gte(least), z.lte(most));
  return z.nullable(
    z.tuple([bound, bound]).check(z.refine(([low, high]) => low <= high, { params: { problem: 'wrong-form' } })),
  );
};

/** Facts that are said on the plant's page alone. What clocks and checks reason with is changed by editing the plant. */
const values = {
  rootHabitPrinted: words,
  propagationMethods: list,
  stratificationDays: range(0, 730),
  pretreatment: words,
  seedsPerGram: z.nullable(seedsPerGram),
  germinationPercent: range(0, 100),
  bloomMonths: months,
  heightCm: range(1, 10_000),
  spreadCm: range(1, 10_000),
  sun: words,
  moisture: words,
  larvalHostOf: list,
  establishmentMeans: z.nullable(z.enum(ESTABLISHMENT_MEANS)),
  hardinessZones: range(1, 13),
  phenology: words,
  seedCollection: words,
  timeToGrowMonths: amount(240),
  growingNote: words,
  secondGrowingNote: words,
  caution: words,
  sapCaution: words,
  identityCaution: words,
  plantingCaution: words,
  spreadCaution: words,
};

export type SettableFact = keyof typeof values;
export const SETTABLE_FACTS = Object.keys(values) as readonly SettableFact[];

const said = { plantId: id, source: optionalText, note: optionalText, ...asRead };
const changes = Object.entries(values).map(([field, value]) =>
  z.strictObject({ ...said, field: z.literal(field), value }),
);

/** One fact of a plant; null says that nothing is known. It counts as the nursery's own, with the source it names. */
export const setPlantFact = z.discriminatedUnion(
  'field',
  changes as [(typeof changes)[number]],
) as unknown as z.ZodMiniType<SetPlantFact, SetPlantFact>;

export interface SetPlantFact {
  plantId: string;
  field: SettableFact;
  value: PlantFactValue;
  source?: string | null | undefined;
  note?: string | null | undefined;
  edition?: number | undefined;
  was?: Record<string, unknown> | undefined;
}

export type PlantFactValue = string | number | boolean | readonly string[] | readonly number[] | null;
