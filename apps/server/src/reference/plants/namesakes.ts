import * as cited from '../cited.ts';
import { confirmed, memory, notFound } from '../fact.ts';
import { keepCrownClear, keepFromLivestock, leaveRootBall, mayDivide, mayLoosen, wearGloves } from '../handling.ts';
import { cultivar, plant } from '../plant-builder.ts';
import type { ReferencePlant } from '../plant-shape.ts';
import { dryMilkweeds } from './milkweeds-dry.ts';

/*
 * Plants that stand here for the sake of their names: each is sold under a common name that belongs to another plant as
 * well, and a nursery must be able to say which one it means. None of them is recommended by standing here.
 */

const tropicalMilkweed = plant({
  code: 'ASCU',
  name: 'Asclepias curassavica',
  author: memory('L.'),
  family: 'Apocynaceae',
  common: [
    'tropical milkweed',
    'butterfly weed',
    'butterfly milkweed',
    'milkweed',
    'bloodflower',
    'scarlet milkweed',
    'Mexican butterfly weed',
  ],
  synonyms: [],
  handling: [leaveRootBall, keepCrownClear, keepFromLivestock, wearGloves],
  facts: {
    rootHabit: memory('fibrous'),
    rootHabitPrinted: memory('fibrous from a woody base'),
    propagationMethods: memory(['seed', 'cuttings']),
    stratificationDays: memory([0, 0]),
    pretreatment: memory(null),
    seedsPerPound: notFound(),
    germinationPercent: notFound(),
    yearOfFirstBloom: memory(1),
    bloomMonths: memory([6, 7, 8, 9, 10]),
    dormantMonths: memory([], 'tender: it does not go dormant in the Upper Midwest but freezes to death'),
    lastEmergenceMd: memory('06-15', 'does not come back after a northern winter'),
    heightCm: memory([60, 120]),
    spreadCm: memory([45, 60]),
    sun: memory('full sun'),
    moisture: memory('medium'),
    larvalHostOf: confirmed(['Danaus plexippus'], cited.LUNA_DUMROESE),
    larvalHost: confirmed(true, cited.LUNA_DUMROESE),
    nativeRegions: memory([], 'a plant of the American tropics'),
    establishmentMeans: memory('introduced'),
    caution: confirmed(
      'Cardenolides (cardiac glycosides): poisonous to horses, cattle, sheep and goats, fresh and dried in hay.',
      cited.COLORADO_POISONOUS,
      'printed for the genus',
    ),
    sapCaution: memory('Milky latex: irritates the skin and can injure the eye; wear gloves and guard the eyes.'),
    identityCaution: memory(
      'Sold under the same common names as the native Asclepias tuberosa: only the scientific name settles it.',
    ),
    plantingCaution: confirmed('Not for monarch plantings: the practice standard excludes it.', cited.NRCS_MONARCH),
  },
});

const orangeConeflower = plant({
  code: 'RUFU',
  name: 'Rudbeckia fulgida',
  author: memory('Aiton'),
  family: 'Asteraceae',
  common: ['orange coneflower', 'black-eyed Susan', 'coneflower', 'perennial black-eyed Susan'],
  synonyms: [],
  handling: [mayLoosen, mayDivide, keepCrownClear],
  facts: {
    rootHabit: memory('rhizome'),
    rootHabitPrinted: memory('fibrous with rhizomes'),
    propagationMethods: memory(['seed', 'division']),
    stratificationDays: memory([30, 60]),
    pretreatment: memory(null),
    seedsPerPound: notFound(),
    germinationPercent: notFound(),
    yearOfFirstBloom: memory(2),
    bloomMonths: memory([7, 8, 9, 10]),
    dormantMonths: memory([1, 2, 3, 12], 'may keep a green rosette'),
    lastEmergenceMd: memory('05-15'),
    heightCm: memory([60, 90]),
    spreadCm: memory([45, 60]),
    sun: memory('full sun to part shade'),
    moisture: memory('medium to moist'),
    larvalHostOf: memory(['Chlosyne nycteis']),
    larvalHost: memory(true),
    nativeRegions: memory(['IL', 'IN', 'MI', 'MO', 'OH'], 'its varieties differ; most stock sold is a selection'),
    establishmentMeans: memory('native'),
    caution: memory(null),
    identityCaution: memory(
      'Black-eyed Susan is first of all Rudbeckia hirta, which is short-lived; ask which one is wanted.',
    ),
  },
});

const butterflyMilkweeds = dryMilkweeds.filter((row) => row.scientificName === 'Asclepias tuberosa');

const yellowButterflyMilkweeds = butterflyMilkweeds.map((species) =>
  cultivar(species, {
    code: 'ASTUA',
    epithet: 'Hello Yellow',
    common: ['yellow butterfly milkweed', 'butterfly milkweed', 'butterfly weed', 'milkweed'],
  }),
);

/** Plants kept so that an ambiguous name can be seen to be one. Standing is per value: see fact.ts. */
export const namesakes: readonly ReferencePlant[] = [tropicalMilkweed, orangeConeflower, ...yellowButterflyMilkweeds];
