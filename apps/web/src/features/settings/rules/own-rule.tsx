/** OwnRule: where a lot's page leads with `?lot=`, a rule for that lot alone; once it is saved or left, the lot is shown again. */
import { skipToken, useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { trpc } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { AddRuleSheet } from './add-rule-sheet.tsx';

export function OwnRule() {
  const search: Record<string, unknown> = useSearch({ strict: false });
  const navigate = useNavigate();
  const lotId = typeof search.lot === 'string' ? search.lot : null;
  const { data: lot } = useQuery(trpc.stock.readLot.queryOptions(lotId === null ? skipToken : { lotId }));
  if (lotId === null || lot === undefined) return null;
  return (
    <AddRuleSheet key={lot.id} lot={lot} onClose={() => void navigate({ to: paths.lot(lot.id), replace: true })} />
  );
}
