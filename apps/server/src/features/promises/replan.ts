import type { CommandContext } from '../../trpc/operation.ts';
import { loadScope } from './allocation/load.ts';
import { keepReservations } from './allocation/plan.ts';
import type { ScopeReservation } from './allocation/scope.ts';
import { needsPlan, notePlanStale, notePlanWhole, saveReservations } from './allocation/store.ts';
import { recordLosses } from './losses/record-losses.ts';
import { solver } from './solving/solver.ts';

/**
 * Brings the promises in line with what a command did, in the command's own transaction. What happened to plants stands: where fewer are left
 * than were promised, reservations are given up, the last rank first, filled again from elsewhere, and what cannot be filled shows as short. What
 * is too large to be solved under the lock only gives up what must be given up; the plan is stale then, and is solved after the command.
 */
export async function replanPromises(context: CommandContext): Promise<void> {
  const { touched } = context;
  const all = touched.allPromises || touched.allClocks;
  const lots = [...touched.lots];
  const batches = [...touched.batches];
  const lines = [...touched.lines];
  if (!all && lines.length === 0) {
    if (lots.length + batches.length === 0 || !(await needsPlan(context))) return;
  }
  const scope = await loadScope(context, { all, lots, batches, lines }, context.commandId);
  const solved = solver.planNow(scope);
  const wanted = solved ?? keepReservations(scope);
  if (solved === null) {
    touched.leavesPlanStale = true;
    await notePlanStale(context);
  }
  if (solved === null || (all && (await notePlanWhole(context)))) touched.features.add('promises');
  await recordLosses(context, scope, wanted);
  const keyOf = ({ lineId, supplyId, pinned }: ScopeReservation) => `${lineId}/${supplyId}/${pinned}`;
  const wantedUnits = new Map(wanted.map((row) => [keyOf(row), row.units]));
  const storedUnits = new Map(scope.reservations.map((row) => [keyOf(row), row.units]));
  const gone = scope.reservations.filter((row) => !wantedUnits.has(keyOf(row)));
  const kept = wanted.filter((row) => storedUnits.get(keyOf(row)) !== row.units);
  if (gone.length + kept.length === 0) return;
  await saveReservations(context, gone, kept);
  touched.features.add('promises').add('gardens');
}
