/** Who works here. Everything with a password goes out at once and is never kept on the device. */
import type { people as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';
import { SettingsTabs } from '../settings-tabs.tsx';
import '../../../ui/action/link.css';
import '../../plants/plants.css';
import { AddPersonSheet } from './add-person-sheet.tsx';
import { ChangePersonSheet } from './change-person-sheet.tsx';

interface Parts {
  messages: Pick<ReturnType<typeof useMessages>, 'settings' | 'shell'>;
  ownId: string;
  instant: (at: string) => string;
  onChange: (person: contracts.PersonRow) => void;
}

function columnsIn({ messages: { settings, shell }, ownId, instant, onChange }: Parts): Column<contracts.PersonRow>[] {
  const { people: say } = settings;
  return [
    {
      key: 'name',
      header: say.columns.name,
      title: true,
      cell: (person) => (
        <button type="button" className="text-link row-link name-button" onClick={() => onChange(person)}>
          {person.id === ownId ? `${person.name} (${say.you})` : person.name}
        </button>
      ),
    },
    { key: 'email', header: say.columns.email, cell: (person) => person.email },
    { key: 'role', header: say.columns.role, cell: (person) => shell.roles[person.role] },
    {
      key: 'state',
      header: say.columns.state,
      cell: (person) =>
        person.endedAt === null ? (
          <Badge shape="full">{say.active}</Badge>
        ) : (
          <Badge shape="open">{say.ended(instant(person.endedAt))}</Badge>
        ),
    },
  ];
}

export function PeoplePage() {
  const messages = useMessages();
  const { people: say } = messages.settings;
  const { person } = useSession();
  const { dates } = useFormat();
  const [changing, setChanging] = useState<contracts.PersonRow | 'new' | null>(null);
  const query = useQuery(trpc.people.listPeople.queryOptions({}));
  const close = () => setChanging(null);
  return (
    <>
      <PageHeader
        title={say.title}
        facts={say.lead}
        actions={
          query.isSuccess && (
            <Button look="primary" onClick={() => setChanging('new')}>
              {say.add}
            </Button>
          )
        }
      />
      <SettingsTabs />
      <Read query={query}>
        {(rows) => (
          <DataTable
            caption={say.count(rows.length)}
            rows={rows}
            rowId={(row) => row.id}
            rowName={(row) => row.name}
            empty={null}
            columns={columnsIn({ messages, ownId: person.id, instant: dates.instant, onChange: setChanging })}
          />
        )}
      </Read>
      {changing === 'new' && <AddPersonSheet onClose={close} />}
      {changing !== null && changing !== 'new' && <ChangePersonSheet person={changing} onClose={close} />}
    </>
  );
}
