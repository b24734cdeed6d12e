import { referencePlants } from '../reference/index.ts';

/** Seeds of a plant in a gram, by the reference; where that knows none, a middling forb's. */
export function seedsPerGramOf(code: string): number {
  return referencePlants.find((plant) => plant.code === code)?.facts.seedsPerGram.value ?? 500;
}
