import { stock } from '@rootclock/contracts';
import { FIELD, readinessAfter, type RootBallResult } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { openEntry, requireSince } from '../../ledger/post.ts';
import { rootBallCheck } from '../../reversal/details.ts';
import { observed, readinessSet } from '../looking-store.ts';
import { loadSelection } from '../selection.ts';

/** What was seen. Only the check of a root ball changes anything: until it holds, a lot is merely expected to be ready. */
export const observeMany = command({
  name: 'observeMany',
  input: stock.observeMany,
  roles: FIELD,
  run: async (context, { kind, result, amount, readyOn, happenedOn, note, ...selection }) => {
    const { lots, batches, placeIds } = await loadSelection(context, selection);
    for (const lot of lots) requireSince(happenedOn, lot.pottedOn);
    const checks =
      kind !== 'root-ball'
        ? []
        : lots.map((lot) => ({
            lotId: lot.id,
            before: { readyOn: lot.readyOn, rootCheckedOn: lot.rootCheckedOn },
            after: readinessAfter(lot, {
              result: result as RootBallResult,
              on: happenedOn,
              expectedOn: readyOn ?? null,
            }),
          }));
    const readiness = checks.map(({ lotId, after }) => ({ lotId, ...after }));
    const entryId = await openEntry(
      context,
      {
        kind: 'observe',
        happenedOn,
        note,
        cause: kind,
        details: checks.length > 0 ? rootBallCheck.written({ checks }) : {},
        subjects: [
          ...lots.map(({ id }) => ({ kind: 'lot' as const, id })),
          ...[...new Set(batches.map(({ id }) => id))].map((id) => ({ kind: 'batch' as const, id })),
          ...placeIds.slice(0, 1).map((id) => ({ kind: 'place' as const, id })),
        ],
      },
      [
        observed(context, { kind, result: result ?? null, amount: amount ?? null }),
        ...(readiness.length > 0 ? [readinessSet(context, readiness)] : []),
      ],
    );
    return { entryId, lots: lots.length };
  },
});
