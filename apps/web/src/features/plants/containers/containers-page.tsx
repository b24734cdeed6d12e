/** The containers plants stand in, with their sizes and the word each size stands on. */
import { useQuery } from '@tanstack/react-query';
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { CheckboxField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { PlantsTabs } from '../plants-tabs.tsx';
import '../plants.css';
import { ContainerSheet } from './container-sheet.tsx';
import { ContainersTable } from './containers-table.tsx';

export function ContainersPage() {
  const { containers: say } = useMessages().plants;
  const { mayBe } = useSession();
  const [retired, setRetired] = useState(false);
  const [changing, setChanging] = useState<contracts.ContainerRow | 'new' | null>(null);
  const query = useQuery(trpc.plants.listContainers.queryOptions({ retired }));
  return (
    <>
      <PageHeader
        title={say.title}
        actions={
          mayBe(GROWERS) && (
            <Button look="primary" onClick={() => setChanging('new')}>
              {say.add}
            </Button>
          )
        }
      />
      <PlantsTabs />
      <p className="page-lead">{say.lead}</p>
      <CheckboxField name="retired" label={say.showRetired} value={retired} onChange={setRetired} />
      <Read query={query}>{(rows) => <ContainersTable rows={rows} onChange={setChanging} />}</Read>
      {changing !== null && (
        <ContainerSheet container={changing === 'new' ? null : changing} onClose={() => setChanging(null)} />
      )}
    </>
  );
}
