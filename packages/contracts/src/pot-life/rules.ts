import { addSpan, isSpan, POT_LIFE_BASES, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, longText, text } from '../fields.ts';

const MOST_YEARS = 50;
const isShort = (span: string) => addSpan('2000-01-01', span) <= addSpan('2000-01-01', `P${MOST_YEARS}Y`);

/** ISO 8601, whole years, months, weeks or days, fifty years at most: P1Y, P6M, P170D. */
const span = z.nullable(
  text(
    z.trim(),
    z.refine((value) => isSpan(value) && isShort(value), { params: { problem: 'wrong-form' } }),
  ),
);
const days = z.int().check(z.gte(0), z.lte(366));

const terms = {
  /** Null for a rule that forbids the winter, whose limit is the freeze day. */
  span,
  winterCarry: z.nullable(z.strictObject({ maxDays: days, graceDays: days })),
  note: z._default(longText, ''),
};

export const addRule = z.strictObject({
  ruleId: id,
  basis: z.enum(POT_LIFE_BASES),
  /** A lot, a plant, a plant in a container, a genus, a root habit, or a root habit in a container. */
  reach: z.strictObject({
    lotId: z.optional(z.nullable(id)),
    plantId: z.optional(z.nullable(id)),
    containerId: z.optional(z.nullable(id)),
    genus: z.optional(z.nullable(text(z.trim(), z.minLength(2), z.maxLength(60)))),
    rootHabit: z.optional(z.nullable(z.enum(ROOT_HABITS))),
  }),
  ...terms,
});
/** Basis and reach stay: a rule for other plants is another rule. */
export const editRule = z.strictObject({ ruleId: id, ...terms, ...asRead });
export const retireRule = z.strictObject({ ruleId: id });
export const listRules = z.strictObject({});
