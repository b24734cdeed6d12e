/** Light and water of a bed, in the steps that growers of native plants use. */
export const BED_SUN = ['full-sun', 'part-sun', 'shade'] as const;
export type BedSun = (typeof BED_SUN)[number];

export const BED_MOISTURE = ['dry', 'medium', 'moist', 'wet'] as const;
export type BedMoisture = (typeof BED_MOISTURE)[number];
