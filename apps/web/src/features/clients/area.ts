/** A bed's area between what is typed, in m² or square feet, and the square centimetres that are kept. */
import type { Units } from '../../lib/format/measures.ts';

export const CM2_PER_M2 = 10_000;
/** Exact: a foot is 30.48 cm by definition. */
const CM2_PER_SQUARE_FOOT = 30.48 ** 2;

const perUnit = (units: Units): number => (units === 'us' ? CM2_PER_SQUARE_FOOT : CM2_PER_M2);

/** Whole square centimetres; a number that cannot be read stays NaN, so that the contract says so. */
export const areaCm2 = (typed: number, units: Units): number => Math.round(typed * perUnit(units));

/** As it would have been typed, with at most two decimals. */
export const areaTyped = (cm2: number, units: Units): number => Math.round((cm2 / perUnit(units)) * 100) / 100;
