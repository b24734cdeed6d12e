/** The facts of a plant's page by what they are about, in the order in which a grower asks. */
export const FACT_GROUPS = {
  growing: [
    'rootHabit',
    'rootHabitPrinted',
    'propagationMethods',
    'timeToGrowMonths',
    'growingNote',
    'secondGrowingNote',
  ],
  seed: ['stratificationDays', 'pretreatment', 'germinationPercent', 'seedsPerGram', 'seedsPerPound', 'seedCollection'],
  year: ['dormantMonths', 'lastEmergenceMd', 'bloomMonths', 'yearOfFirstBloom', 'phenology'],
  site: ['sun', 'moisture', 'heightCm', 'spreadCm', 'hardinessZones'],
  wild: ['larvalHost', 'larvalHostOf', 'nativeRegions', 'establishmentMeans'],
} as const;
export type FactGroup = keyof typeof FACT_GROUPS;

/** The facts that warn. They stand at the head of the page and not among the others. */
export const CAUTION_FACTS = ['caution', 'sapCaution', 'identityCaution', 'plantingCaution', 'spreadCaution'] as const;
