/** The rows of the containers page. */
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';

interface Parts {
  plants: ReturnType<typeof useMessages>['plants'];
  measures: ReturnType<typeof useFormat>['measures'];
  /** Null for whoever may only look. */
  onChange: ((container: contracts.ContainerRow) => void) | null;
}

function columnsIn({ plants: { containers: say, containerKinds, containerPicker }, measures, onChange }: Parts): Column<contracts.ContainerRow>[] {
  const columns: Column<contracts.ContainerRow>[] = [
    {
      key: 'name', header: say.columns.name, title: true,
      cell: (row) => (
        <>
          {row.name} <span className="plant-common plant-code">{row.code}</span>
          {row.isRetired && <Badge shape="open">{say.retired}</Badge>}
        </>
      ),
    },
    { key: 'kind', header: say.columns.kind, cell: (row) => (row.cells === null ? containerKinds[row.kind] : `${containerKinds[row.kind]}, ${containerPicker.cells(row.cells)}`) },
    { key: 'volume', header: say.columns.volume, figure: true, cell: (row) => (row.volumeMl === null ? '' : measures.volume(row.volumeMl)) },
    { key: 'depth', header: say.columns.depth, figure: true, cell: (row) => (row.depthMm === null ? '' : measures.length(row.depthMm)) },
    { key: 'footprint', header: say.columns.footprint, figure: true, cell: (row) => (row.widthMm === null || row.lengthMm === null ? '' : say.footprint(measures.length(row.widthMm), measures.length(row.lengthMm))) },
    { key: 'standing', header: say.columns.standing, cell: (row) => <StandingMark standing={row.standing} source={row.source} /> },
    { key: 'inUse', header: say.columns.inUse, cell: (row) => say.uses(row.inUse) },
  ];
  if (onChange === null) return columns;
  const change: Column<contracts.ContainerRow> = {
    key: 'change', header: say.edit,
    cell: (row) => (
      <Button look="quiet" aria-label={say.editTitle(row.name)} onClick={() => onChange(row)}>
        {say.edit}
      </Button>
    ),
  };
  return [...columns, change];
}

export function ContainersTable({ rows, onChange }: { rows: readonly contracts.ContainerRow[]; onChange: (container: contracts.ContainerRow) => void }) {
  const { plants } = useMessages();
  const { mayBe } = useSession();
  const { measures } = useFormat();
  return (
    <DataTable
      caption={plants.containers.title} quietCaption rows={rows} rowId={(row) => row.id} rowName={(row) => row.name}
      columns={columnsIn({ plants, measures, onChange: mayBe(GROWERS) ? onChange : null })}
      empty={<EmptyState kind="nothing-yet" title={plants.containers.emptyTitle} />}
    />
  );
}
