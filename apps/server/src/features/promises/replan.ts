import { refuse } from '../../refusal.ts';
import type { CommandContext } from '../../trpc/operation.ts';
import { recordLosses } from './losses/record-losses.ts';
import { planApart } from './planning/apart/plan-apart.ts';
import { loadScope } from './planning/load.ts';
import type { ScopeReservation } from './planning/scope.ts';
import { needsPlan, saveReservations } from './planning/store.ts';

/**
 * Brings the promises in line with what a command did, in the command's own transaction. What happened to plants stands: where fewer are left
 * than were promised, reservations are given up, the last rank first, filled again from elsewhere, and what cannot be filled shows as short. Where
 * that takes longer than a command may, nothing is filled again until the next plan, at the latest the next day's; only what asks for more is refused.
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
  const { reservations: wanted, isSolved } = await planApart(scope, context.msLeft);
  if (!isSolved && touched.asksForMore)
    refuse('too-many-lines-share', {
      lines: scope.lines.length,
      plants: new Set(scope.supplies.map(({ item }) => item)).size,
    });
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
