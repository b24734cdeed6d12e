import * as z from 'zod/mini';
import { id } from '../fields.ts';

/** What stands in the middle of nothing and certainty: a confidence of one half says nothing, of one can never be met. */
const confidence = z.number().check(z.gte(0.5), z.lte(0.999));

/** How a nursery weighs its own counts against what protocols say, and how careful its plans are. */
export const setLearning = z.strictObject({
  /** How many plants a protocol's figure counts as. */
  priorWeight: z.int().check(z.gte(1), z.lte(10_000)),
  /** The most plants that counts may count as. */
  evidenceLimit: z.int().check(z.gte(10), z.lte(1_000_000)),
  planConfidence: confidence,
  /** The share of plants that live through a winter, before any were counted. */
  winterSurvival: z.number().check(z.gte(0), z.lte(1)),
});

export const readRecord = z.strictObject({});
export const readPlantRecord = z.strictObject({ plantId: id });
