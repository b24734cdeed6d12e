/** All places as a tree, each with what stands there and whether it may be entered. */
import { useQuery } from '@tanstack/react-query';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { CheckboxField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { StockTabs } from '../stock-tabs.tsx';
import { PlaceForm } from './place-form.tsx';
import { PlaceTree } from './place-tree.tsx';

export function PlacesPage() {
  const { places } = useMessages().stockIn;
  const { mayBe } = useSession();
  const [adding, setAdding] = useState(false);
  const [retired, setRetired] = useState(false);
  const query = useQuery(trpc.stock.listPlaces.queryOptions({ retired }));
  const add = mayBe(GROWERS) && (
    <Button look="primary" onClick={() => setAdding(true)}>
      {places.add}
    </Button>
  );
  return (
    <>
      <StockTabs />
      <PageHeader title={places.title} actions={query.data?.length ? add : undefined} />
      <Read query={query}>
        {(rows) =>
          rows.length === 0 && !retired ? (
            <EmptyState kind="nothing-yet" title={places.none} actions={add}>
              {places.noneText}
            </EmptyState>
          ) : (
            <div className="stack">
              <PlaceTree rows={rows} label={places.title} />
              <CheckboxField name="retired" label={places.showRetired} value={retired} onChange={setRetired} />
            </div>
          )
        }
      </Read>
      {adding && <PlaceForm onClose={() => setAdding(false)} />}
    </>
  );
}
