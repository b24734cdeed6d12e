/**
 * Facts as data: what a nursery begins with and then mends. Standing is per value, never per plant or table, so that a
 * page can tell what is printed somewhere from what somebody remembers or merely assumes.
 */
export { type CautionOccasion, type ProductCaution, productCautions } from './cautions.ts';
export {
  MILLILITRES_PER_CUBIC_INCH,
  type ReferenceContainer,
  type TradeClass,
  referenceContainers,
  tradeClassOf,
  tradeClasses,
} from './containers.ts';
export type { Fact, Range } from './fact.ts';
export {
  type CautionKey,
  type CommonName,
  type FactKey,
  type PlantCaution,
  type PlantFacts,
  type ReferencePlant,
  type Synonym,
} from './plant-shape.ts';
export { GRAMS_PER_POUND } from './plant-builder.ts';
export { referencePlants } from './plants/index.ts';
export {
  type ReferenceReach,
  type ReferenceRule,
  type ReferenceWindow,
  referenceRules,
  referenceSettings,
  referenceWindows,
} from './pot-life.ts';
export { type ReferenceProtocol, referenceProtocols } from './protocols/index.ts';
export { type ReferenceRegion, type RegionCode, referenceRegions } from './regions.ts';
