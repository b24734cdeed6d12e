import { seasonEndAhead } from '@rootclock/domain';
import type { Replan } from '../db/runner.ts';
import type { ForeseeRoll, RollDay } from '../db/writing/own-writes.ts';
import { openLinesOf } from './orders/lines/store.ts';
import { purgeDoor } from './people/door/store.ts';
import { noteRolledDay, setSeasonEnd } from './people/store.ts';
import { reckonClocks } from './pot-life/reckon-clocks.ts';
import { replanPromises } from './promises/replan.ts';
import { foreseePlan } from './promises/solving/foresee-plan.ts';
import { keepBatchEvidence } from './propagation/learning/store.ts';

/** After a command, in its own transaction: what was touched gets its clocks, what its batches tell, and then its promises reckoned anew. */
export const replan: Replan = async (context, rulesVersion) => {
  const { touched } = context;
  if (touched.clients.size + touched.sites.size > 0)
    for (const lineId of await openLinesOf(context, touched.clients, touched.sites)) touched.line(lineId);
  await reckonClocks(context, rulesVersion);
  await keepBatchEvidence(context, [...touched.batches]);
  await replanPromises(context);
};

/** What time alone changes: lots past their plant-by day serve nobody, overdue orders are served from today, and a season that has passed gives way to the next. */
export const rollDay: RollDay = async (context) => {
  context.touched.allPromises = true;
  context.touched.features.add('promises').add('pot-life');
  await purgeDoor(context.tx, context.now);
  const seasonEndOn = await noteRolledDay(context);
  const ahead = seasonEndAhead(seasonEndOn, context.today);
  if (ahead === seasonEndOn) return;
  await setSeasonEnd(context, ahead);
  context.touched.features.add('people');
};

/** A day's roll plans everything anew, and so does what a command left stale: what takes long of it is done before others have to wait for it. */
export const foreseeRoll: ForeseeRoll = (context) => foreseePlan(context);
