import type { promises } from '@rootclock/contracts';
import type { CommandContext } from '../../../trpc/operation.ts';
import type { Scope, ScopeReservation } from '../allocation/scope.ts';
import { lostLines, wholeLines } from './lost-lines.ts';
import { insertLosses, settleWhole } from './store.ts';

/** Notes which lines lose plants by a command although nobody changed their order, and settles older losses of lines that are whole again. */
export async function recordLosses(
  context: CommandContext,
  scope: Scope,
  wanted: readonly ScopeReservation[],
): Promise<void> {
  const named = context.touched.lines;
  const lost = lostLines(scope, wanted, named);
  const whole = wholeLines(scope, wanted, named);
  if (lost.length > 0) await insertLosses(context, sourceOf(context), lost);
  if (whole.length > 0 && (await settleWhole(context, whole))) context.touched.features.add('promises');
}

/** What it is when the command made no entry. */
function sourceOf({ personId, touched }: CommandContext): Exclude<promises.LossSource, 'entry'> {
  if (personId === '') return 'day';
  return touched.lines.size > 0 ? 'order' : 'setting';
}
