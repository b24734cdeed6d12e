import { referenceSettings } from '../../../../reference/index.ts';
import type { CommandContext } from '../../../../trpc/operation.ts';
import { loadContainerCodes } from '../../../plants/containers/store.ts';
import { loadReferencePlants } from '../../../plants/reference-load.ts';
import { clocksChanged } from '../../../plants/store.ts';
import { ruleRows, windowRows } from './rows.ts';
import { beginSettings, insertRules, insertWindows } from './store.ts';

export interface LoadedReference {
  plants: number;
  containers: number;
  rules: number;
  windows: number;
}

/** Fills a nursery with the reference data: the plants, and then what is known of their clocks. Answers how much was added. */
export async function loadReferenceData(context: CommandContext): Promise<LoadedReference> {
  const { nurseryId } = context;
  await beginSettings(context, {
    freezeMd: referenceSettings.freezeMd.value,
    freezeStanding: referenceSettings.freezeMd.standing,
    noticeDays: referenceSettings.noticeDays.value,
  });
  const added = await loadReferencePlants(context);
  const rules = await insertRules(context, ruleRows(nurseryId, await loadContainerCodes(context)));
  const windows = await insertWindows(context, windowRows(nurseryId));
  context.touched.features.add('plants').add('pot-life').add('people');
  await clocksChanged(context);
  return { ...added, rules, windows };
}
