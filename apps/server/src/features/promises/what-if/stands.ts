import type { ReadContext } from '../../../trpc/operation.ts';
import { loadClockRules, loadClockSubjects } from '../../pot-life/clocks-store.ts';
import { reckon } from '../../pot-life/reckon-clocks.ts';
import type { Scope, ScopeSupply } from '../allocation/scope.ts';
import type { Stand } from './store.ts';

/** A lot or batch as it would be: where it stands then, and for a batch what is expected of it then. */
export interface Restood {
  stands: readonly Stand[];
  expected?: { units: number; readyOn: string | null };
}

const sum = (stands: readonly Stand[]) => stands.reduce((units, stand) => units + stand.units, 0);

/**
 * The scope with these lots and batches standing otherwise. Their plant-by days are reckoned anew as after a command, since what is left may all
 * stand under cover, or be ready on another day. What has nothing left is closed and serves nobody.
 */
export async function restand(
  context: ReadContext,
  scope: Scope,
  changes: ReadonlyMap<string, Restood>,
): Promise<Scope> {
  const concerned = scope.supplies.filter(({ id }) => changes.has(id));
  const idsOf = (kind: ScopeSupply['kind']) => concerned.filter((supply) => supply.kind === kind).map(({ id }) => id);
  const subjects = new Map(
    (await loadClockSubjects(context, { lots: idsOf('lot'), batches: idsOf('batch') })).map((subject) => [
      subject.id,
      subject,
    ]),
  );
  const rules = await loadClockRules(context);
  return {
    ...scope,
    supplies: scope.supplies.flatMap((supply) => {
      const change = changes.get(supply.id);
      const subject = subjects.get(supply.id);
      if (!change || !subject) return [supply];
      const { stands, expected } = change;
      if (sum(stands) === 0) return [];
      const readyOn = expected ? expected.readyOn : supply.readyOn;
      const { result } = reckon(
        {
          ...subject,
          readyOn,
          coldSheltered: stands.every(({ isSheltered }) => isSheltered ?? true),
          isLive: true,
        },
        rules,
        context.today,
      );
      const there = stands.filter(({ placeId }) => placeId !== null);
      return [
        {
          ...supply,
          readyOn,
          plantByOn: result.plantByOn,
          plantByState: result.state,
          limitOn: result.limitOn,
          units: expected ? expected.units : sum(there.filter(({ isQuarantine }) => !isQuarantine)),
          quarantinedUnits: supply.kind === 'batch' ? 0 : sum(there.filter(({ isQuarantine }) => isQuarantine)),
        },
      ];
    }),
  };
}

/** What is left of stands after so many units went from these places. */
export function without(stands: readonly Stand[], taken: readonly { placeId: string; units: number }[]): Stand[] {
  const gone = new Map(taken.map(({ placeId, units }) => [placeId, units]));
  return stands
    .map((stand) => ({ ...stand, units: stand.units - (stand.placeId === null ? 0 : (gone.get(stand.placeId) ?? 0)) }))
    .filter(({ units }) => units > 0);
}
