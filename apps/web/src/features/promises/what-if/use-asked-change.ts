/** What the address asks to be tried: a kind of change (`?kind=`) of an order, a lot or a batch (`?order=`, `?lot=`, `?batch=`). */
import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { promises as contracts } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';
import { NOTHING, type WhatIfValues } from './what-if-values.ts';

export function useAskedChange(): { values: WhatIfValues; isLoading: boolean } {
  const search: { kind?: unknown; order?: string; lot?: string; batch?: string } = useSearch({ strict: false });
  const order = useQuery({
    ...trpc.promises.readOrder.queryOptions({ orderId: search.order ?? '' }),
    enabled: search.order !== undefined,
  });
  const lot = useQuery({
    ...trpc.stock.readLot.queryOptions({ lotId: search.lot ?? '' }),
    enabled: search.lot !== undefined,
  });
  const batch = useQuery({
    ...trpc.propagation.readBatch.queryOptions({ batchId: search.batch ?? '' }),
    enabled: search.batch !== undefined,
  });
  const kind = contracts.WHAT_IF_KINDS.find((each) => each === search.kind) ?? '';
  return {
    values: {
      ...NOTHING,
      kind,
      order: order.data ? { id: order.data.id, code: order.data.code } : null,
      lot: lot.data ? { id: lot.data.id, code: lot.data.code } : null,
      batch: batch.data ? { id: batch.data.batchId, code: batch.data.code } : null,
      cautiousUnits: batch.data?.cautiousUnits ?? null,
      readyOn: batch.data?.readyOn ?? '',
    },
    isLoading: order.isLoading || lot.isLoading || batch.isLoading,
  };
}
