/** FreeThen: how many plants of an item are free on a day, and in which lots, while a line is still being typed. */
import { useQuery } from '@tanstack/react-query';
import { isCalendarDate } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import type { Conditions } from './condition-fields.tsx';
import type { Item } from './item-pickers.tsx';

export interface FreeThenProps {
  item: Item;
  on: string;
  siteId: string | null;
  clientId: string | null;
  nativesOnly: boolean;
  conditions: Pick<Conditions, 'seedZone' | 'wildType' | 'untreated'>;
}

export function FreeThen({ item, on, siteId, clientId, nativesOnly, conditions }: FreeThenProps) {
  const { gardens } = useMessages();
  const isAsked = item.plant !== null && item.container !== null && isCalendarDate(on);
  const { seedZone, wildType, untreated } = conditions;
  const query = useQuery({
    ...trpc.promises.offersFor.queryOptions({ plantId: item.plant?.id ?? '', containerId: item.container?.id ?? '', on, siteId, clientId, seedZone: seedZone.trim() || null, wildType, untreated, nativesOnly }),
    enabled: isAsked,
  });
  if (!isAsked) return null;
  if (!query.data) return <span role="status">{query.isError ? '' : gardens.line.checking}</span>;
  const free = query.data.offers.filter(({ freeUnits }) => freeUnits > 0);
  const total = free.reduce((sum, { freeUnits }) => sum + freeUnits, 0);
  return (
    <span role="status">
      {gardens.line.freeThen(total, on)}
      {free.length > 0 && ` ${free.map(({ code, freeUnits }) => `${code} (${freeUnits})`).join(', ')}`}
    </span>
  );
}
