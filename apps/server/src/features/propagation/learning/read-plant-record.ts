import { propagation } from '@rootclock/contracts';
import { EVERYONE, type LossRate, lossExposure, lossRate, SEASONS, type Season } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { query } from '../../../trpc/operation.ts';
import { loadClockRules } from '../../pot-life/clocks-store.ts';
import { loadLedgerDays, loadLivingRates, loadWinterDays, type LivingRates } from '../../stock/winter/rates.ts';
import { readBatchCourses, readPlants, readPotLives, type RecordPlant } from './record/reads.ts';
import { loadRecordedShares, type RecordedShares } from './record/shares.ts';
import { type PotSurvival, survivalsOf } from './record/survival.ts';
import { type TimesOfMethod, timesOf } from './record/times.ts';
import { type LearningSettings, loadLearningSettings } from './store.ts';

export interface PlantRecord {
  plant: RecordPlant;
  settings: LearningSettings;
  shares: RecordedShares[];
  times: TimesOfMethod[];
  losses: (LossRate & { season: Season; plantDays: number; losses: number })[];
  living: LivingRates;
  survivals: PotSurvival[];
}

/** All that the nursery has learned of one plant. */
export const readPlantRecord = query({
  name: 'readPlantRecord',
  isHeavy: true,
  input: propagation.readPlantRecord,
  roles: EVERYONE,
  read: async (context, { plantId }): Promise<PlantRecord> => {
    const plant = found((await readPlants(context, [plantId]))[0], 'plant', 'plantId');
    const { byPlant, tally } = await loadLedgerDays(context, [plantId], await loadWinterDays(context));
    const { seasons } = lossExposure(byPlant.get(plantId) ?? [], tally);
    const [living] = await loadLivingRates(context, [plantId]);
    const { rules } = await loadClockRules(context);
    return {
      plant,
      settings: await loadLearningSettings(context),
      shares: await loadRecordedShares(context, [plantId]),
      times: timesOf(await readBatchCourses(context, plantId), context.today),
      losses: SEASONS.map((season) => ({ season, ...seasons[season], ...lossRate(seasons[season]) })),
      living: living as LivingRates,
      survivals: survivalsOf(plant, await readPotLives(context, plantId), rules),
    };
  },
});
