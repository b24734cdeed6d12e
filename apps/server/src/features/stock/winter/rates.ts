import {
  addDays,
  type DayTally,
  type LedgerDay,
  LEARNING_CONFIDENCE,
  learnShare,
  lossExposure,
  lossRate,
  monthDayIn,
  NOTHING_TRIED,
  tallyDays,
  type WinterDays,
} from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { readLedgerDays, readWinterCounts, readWinterSettings, type WinterSettings } from './reads.ts';

/** Deaths per plant-day outside winter before a nursery has recorded any: about one plant in ten a year. Assumed. */
const ASSUMED_LOSSES_PER_DAY = 0.0003;
const DAYS_OF_YEAR = 365;
/** The last day of winter where no planting window says when spring begins. Assumed. */
const ASSUMED_WINTER_END = '03-31';

/** How fast plants of one plant are lost outside winter, what of them lives through one, and what both rest on. */
export interface LivingRates {
  plantId: string;
  /** Deaths per plant and day outside the days of winter; an assumed rate counts with the weight of a prior. */
  lossRatePerDay: number;
  /** The share that lives through a whole winter; the nursery's own setting counts with the weight of a prior. */
  winterSurvival: number;
  restsOn: {
    /** Plant-days in pots outside winter, and the losses in them. */
    plantDays: number;
    losses: number;
    /** Plants counted in spring, those of them that lived, and the lots they stood in. */
    winterPlants: number;
    winterLived: number;
    winterLots: number;
  };
}

/** Winter runs from the freeze day to the day before the year's first planting window opens. */
export function winterDaysOf({
  freezeMd,
  firstOpensMd,
}: Pick<WinterSettings, 'freezeMd' | 'firstOpensMd'>): WinterDays {
  // Any leap year has all days of the year.
  return {
    fromMd: freezeMd,
    toMd: firstOpensMd === null ? ASSUMED_WINTER_END : addDays(monthDayIn(2000, firstOpensMd), -1).slice(5),
  };
}

export const loadWinterDays = async (context: ReadContext): Promise<WinterDays> =>
  winterDaysOf(await readWinterSettings(context));

/** What the ledger did to plants in pots, by plant, with the days it took to do so tallied up to today. */
export async function loadLedgerDays(
  context: ReadContext,
  plantIds: readonly string[] | 'all',
  winter: WinterDays,
): Promise<{ byPlant: Map<string, LedgerDay[]>; tally: DayTally }> {
  const byPlant = new Map<string, LedgerDay[]>();
  let firstOn = context.today;
  for (const { plantId, ...day } of await readLedgerDays(context, plantIds)) {
    if (day.on < firstOn) firstOn = day.on;
    const days = byPlant.get(plantId);
    if (days) days.push(day);
    else byPlant.set(plantId, [day]);
  }
  return { byPlant, tally: tallyDays(firstOn, context.today, winter) };
}

/** The rates of each plant named, in the order asked for. A plant of which nothing is recorded has what is assumed. */
export async function loadLivingRates(context: ReadContext, plantIds: readonly string[]): Promise<LivingRates[]> {
  if (plantIds.length === 0) return [];
  const settings = await readWinterSettings(context);
  const winter = winterDaysOf(settings);
  const { byPlant, tally } = await loadLedgerDays(context, plantIds, winter);
  const winters = new Map((await readWinterCounts(context, plantIds)).map((row) => [row.plantId, row]));
  const expectedDays = settings.priorWeight * DAYS_OF_YEAR;
  return plantIds.map((plantId) => {
    const { growing } = lossExposure(byPlant.get(plantId) ?? [], tally);
    const counted = winters.get(plantId);
    const evidence = counted ? { tried: counted.stood, passed: counted.lived, batches: counted.lots } : NOTHING_TRIED;
    const { rate } = lossRate({
      ...growing,
      prior: { losses: ASSUMED_LOSSES_PER_DAY * expectedDays, plantDays: expectedDays },
    });
    const { share } = learnShare({ share: settings.winterSurvival, weight: settings.priorWeight }, evidence, {
      evidenceLimit: settings.evidenceLimit,
      confidence: LEARNING_CONFIDENCE,
    });
    return {
      plantId,
      lossRatePerDay: rate ?? ASSUMED_LOSSES_PER_DAY,
      winterSurvival: share,
      restsOn: { ...growing, winterPlants: evidence.tried, winterLived: evidence.passed, winterLots: evidence.batches },
    };
  });
}
