import type { CommandContext } from '../../../trpc/operation.ts';
import type { ScopeReservation } from '../allocation/scope.ts';
import { loadReservations, saveReservations } from '../allocation/store.ts';

/** Plants taken for a line use up what it had reserved of the same lot, pinned units first; the replan settles the rest. */
export async function consumeReservations(
  context: CommandContext,
  taken: readonly { lineId: string; supplyId: string; units: number }[],
): Promise<void> {
  const lines = [...new Set(taken.map(({ lineId }) => lineId))];
  if (lines.length === 0) return;
  const rows = (await loadReservations(context, lines, [])).sort((a, b) => Number(b.pinned) - Number(a.pinned));
  const changed = new Set<ScopeReservation>();
  for (const { lineId, supplyId, units } of taken) {
    let left = units;
    for (const row of rows) {
      if (row.lineId !== lineId || row.supplyId !== supplyId || left === 0) continue;
      const used = Math.min(left, row.units);
      row.units -= used;
      left -= used;
      changed.add(row);
    }
  }
  await saveReservations(
    context,
    [...changed].filter(({ units }) => units === 0),
    [...changed].filter(({ units }) => units > 0),
  );
}
