import type { Wearing } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadLivingRates, loadWinterDays } from '../../stock/winter/rates.ts';

/** How plants of each plant die while they wait, by what the nursery recorded. */
export async function loadWearing(
  context: ReadContext,
  plantIds: readonly string[],
): Promise<(plantId: string) => Wearing> {
  const winter = await loadWinterDays(context);
  const rates = new Map((await loadLivingRates(context, plantIds)).map((rate) => [rate.plantId, rate]));
  return (plantId) => {
    const rate = rates.get(plantId);
    return { lossRatePerDay: rate?.lossRatePerDay ?? 0, winterSurvival: rate?.winterSurvival ?? 1, winter };
  };
}
