import type { ReferencePlant } from '../plant-shape.ts';
import { isDeepRooted } from './seed.ts';
import type { Particulars, ReferenceProtocol, ReferenceStage } from './shape.ts';
import { assumedStage, lastStages, withParticulars } from './stages.ts';
import { pieceTexts } from './texts.ts';

const potFor = (plant: ReferencePlant) => (isDeepRooted(plant) ? 'tall-1l' : 'pot-1l');

function protocol(
  plant: ReferencePlant,
  method: 'cutting' | 'root-cutting' | 'division',
  first: readonly ReferenceStage[],
  { stages, texts, targetContainerCode }: Particulars,
): ReferenceProtocol {
  const growing = assumedStage('growing-on', [45, 60, 90], 0.95, { light: 'full-light', rests: true });
  const all = withParticulars([...first, ...lastStages(growing)], stages);
  const { standing, source } = plant.facts.propagationMethods;
  const isDivision = method === 'division';
  return {
    plantCode: plant.code,
    method,
    startUnit: isDivision ? 'piece' : 'cell',
    startContainerCode: isDivision ? null : 'plug-50',
    targetContainerCode: targetContainerCode ?? potFor(plant),
    seedsPerCell: null,
    standing,
    source,
    stages: all,
    texts: { ...pieceTexts(plant, method), ...texts },
  };
}

const SEASON = 'The season is common practice.';

/** Stems, soft or half ripe. No share of rooting was found for any plant of the list: it is assumed. */
export const cuttingProtocol = (plant: ReferencePlant, particulars: Particulars = {}): ReferenceProtocol =>
  protocol(
    plant,
    'cutting',
    [
      assumedStage('sticking', [0, 0, 0], 1, {
        season: { fromMd: '05-20', toMd: '07-31' },
        depthMm: 30,
        medium: 'sand and perlite, damp',
        light: 'shade',
        note: `${SEASON} Shoots that snap when bent.`,
      }),
      assumedStage('rooting', [14, 28, 56], 0.6, {
        temperatureLowC: 18,
        temperatureHighC: 24,
        light: 'shade',
        note: 'Under mist or a cover; rooted when a gentle pull meets resistance.',
      }),
    ],
    particulars,
  );

/** Pieces of root, taken and stored while the plant is dormant. */
export const rootCuttingProtocol = (plant: ReferencePlant, particulars: Particulars = {}): ReferenceProtocol =>
  protocol(
    plant,
    'root-cutting',
    [
      assumedStage('stratification', [0, 30, 120], 0.9, {
        temperatureLowC: 1,
        temperatureHighC: 4,
        light: 'dark',
        medium: 'damp peat or sand',
        note: 'Roots lifted in autumn, stored cold and damp until they are stuck; no time is needed.',
      }),
      assumedStage('sticking', [0, 0, 0], 1, {
        season: { fromMd: '02-01', toMd: '04-30' },
        depthMm: 20,
        medium: 'free-draining soilless mix',
        note: `${SEASON} The upper end up.`,
      }),
      assumedStage('emergence', [14, 28, 60], 0.7, {
        temperatureLowC: 16,
        temperatureHighC: 22,
        note: 'Shoots may come before new roots do.',
      }),
    ],
    particulars,
  );

/** Crowns and rhizomes, divided as they begin to grow. */
export const divisionProtocol = (plant: ReferencePlant, particulars: Particulars = {}): ReferenceProtocol =>
  protocol(
    plant,
    'division',
    [
      assumedStage('sticking', [0, 0, 1], 1, {
        season: { fromMd: '03-20', toMd: '05-31' },
        medium: 'potting mix',
        note: `${SEASON} Each piece with a bud and roots of its own.`,
      }),
      assumedStage('rooting', [10, 21, 42], 0.9, { light: 'shade' }),
    ],
    particulars,
  );
