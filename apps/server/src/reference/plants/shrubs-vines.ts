import * as cited from '../cited.ts';
import { confirmed, memory, notFound, vendor } from '../fact.ts';
import { keepCrownClear, leaveRootBall, protectFromBrowse } from '../handling.ts';
import { plant } from '../plant-builder.ts';
import type { ReferencePlant } from '../plant-shape.ts';

/** A shrub and a vine. Standing is per value: see fact.ts. */
export const shrubsVines: readonly ReferencePlant[] = [
  plant({
    code: 'CEAM',
    name: 'Ceanothus americanus',
    author: memory('L.'),
    family: 'Rhamnaceae',
    common: ['New Jersey tea', 'redroot', 'wild snowball'],
    synonyms: [],
    handling: [leaveRootBall, keepCrownClear, protectFromBrowse],
    facts: {
      rootHabit: confirmed('woody', 'seed-house texts; Acta Hort. 1085:459 (both seed and cuttings in use)'),
      rootHabitPrinted: confirmed(
        'deep woody roots',
        'seed-house texts; Acta Hort. 1085:459 (both seed and cuttings in use)',
      ),
      propagationMethods: confirmed(
        ['seed', 'softwood cuttings', 'semi-hardwood cuttings'],
        'Penn State horticulture page citing NPIN 2015',
      ),
      stratificationDays: confirmed([60, 90], cited.EASTERN_ILLINOIS),
      pretreatment: confirmed('very hot water soak overnight (scarification required)', cited.EASTERN_ILLINOIS),
      seedsPerPound: vendor(113_500, 'seed seller ~7,094/oz; two sellers 243-250 seeds/g'),
      germinationPercent: notFound(),
      yearOfFirstBloom: memory(3),
      bloomMonths: confirmed([5, 6, 7, 8], cited.EASTERN_ILLINOIS),
      dormantMonths: memory([1, 2, 3, 4, 11, 12], 'leafless; woody stems may die back to the crown'),
      lastEmergenceMd: memory('06-10'),
      heightCm: vendor([61, 91], cited.SEED_SELLER),
      spreadCm: memory([60, 90]),
      sun: vendor('full sun to part shade', 'Penn State page'),
      moisture: vendor('dry to medium', 'seed sellers'),
      larvalHostOf: confirmed(
        ['Erynnis martialis', 'Celastrina spp.'],
        'Penn State horticulture page 2015 (mottled duskywing, spring azure)',
      ),
      larvalHost: confirmed(true, 'Penn State horticulture page 2015 (mottled duskywing, spring azure)'),
      nativeRegions: memory(['IA', 'IL', 'IN', 'MI', 'MN', 'MO', 'OH', 'WI']),
      establishmentMeans: memory('native'),
      caution: memory(null),
    },
  }),
  plant({
    code: 'ARMA',
    name: 'Aristolochia macrophylla',
    author: memory('Lam.'),
    family: 'Aristolochiaceae',
    common: ['pipevine', "Dutchman's pipe", 'large-leaved pipevine'],
    synonyms: [
      ['Aristolochia durior', 'Hill'],
      ['Aristolochia sipho', "L'Hér."],
      ['Isotrema macrophyllum', '(Lam.) C.F. Reed'],
    ],
    handling: [leaveRootBall, keepCrownClear],
    facts: {
      rootHabit: memory('woody'),
      rootHabitPrinted: memory('woody root'),
      propagationMethods: memory(['seed', 'cuttings']),
      stratificationDays: memory([90, 90]),
      pretreatment: memory(null),
      seedsPerPound: notFound(),
      germinationPercent: notFound(),
      yearOfFirstBloom: memory(5, 'several years'),
      bloomMonths: memory([5, 6]),
      dormantMonths: memory([1, 2, 3, 4, 11, 12]),
      lastEmergenceMd: memory('06-10'),
      heightCm: memory([300, 900]),
      spreadCm: memory([300, 600]),
      sun: memory('part shade to sun'),
      moisture: memory('medium'),
      larvalHostOf: memory(['Battus philenor']),
      larvalHost: memory(true),
      nativeRegions: memory([], 'native to the Appalachians, none of these states'),
      establishmentMeans: memory('introduced', 'within the states listed in regions.ts'),
      caution: confirmed(
        'Contains aristolochic acids: never to be eaten or brewed.',
        cited.IARC_VOLUME_82,
        'genus reviewed in vol. 82, 2002 (NCBI NBK326609); Group 1, carcinogenic to people: from memory',
      ),
    },
  }),
];
