import * as z from 'zod/mini';
import { asRead, id } from '../fields.ts';

/** How a nursery weighs its own counts against what protocols say, and how careful its plans are. */
export const setLearning = z.strictObject({
  ...asRead,
  /** How many plants a protocol's figure counts as. */
  priorWeight: z.int().check(z.gte(1), z.lte(10_000)),
  /** The most plants that counts may count as. */
  evidenceLimit: z.int().check(z.gte(10), z.lte(1_000_000)),
  /** How sure plans are: one half says nothing, certainty can never be met. */
  planConfidencePercent: z.number().check(z.gte(50), z.lte(99.9)),
  /** Of plants in pots, those that live through a winter, before any were counted. */
  winterSurvivalPercent: z.number().check(z.gte(0), z.lte(100)),
});

export const readRecord = z.strictObject({});
export const readPlantRecord = z.strictObject({ plantId: id });
