/** The rows of the containers page. */
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { DataTable, type Column } from '../../../ui/table/index.ts';
import '../../../ui/action/link.css';
import '../plants.css';

interface Parts {
  plants: ReturnType<typeof useMessages>['plants'];
  measures: ReturnType<typeof useFormat>['measures'];
  /** Null for whoever may only look. */
  onChange: ((container: contracts.ContainerRow) => void) | null;
}

function columnsIn({
  plants: { containers: say, containerKinds, containerPicker },
  measures,
  onChange,
}: Parts): Column<contracts.ContainerRow>[] {
  return [
    {
      key: 'name',
      header: say.columns.name,
      title: true,
      cell: (row) => (
        <>
          {onChange === null ? (
            row.name
          ) : (
            <button type="button" className="text-link row-link name-button" onClick={() => onChange(row)}>
              {row.name}
            </button>
          )}
          <span className="plant-common plant-code">{row.code}</span>
          {row.isRetired && <Badge shape="open">{say.retired}</Badge>}
        </>
      ),
    },
    {
      key: 'kind',
      header: say.columns.kind,
      cell: (row) =>
        row.cells === null
          ? containerKinds[row.kind]
          : `${containerKinds[row.kind]}, ${containerPicker.cells(row.cells)}`,
    },
    {
      key: 'volume',
      header: say.columns.volume,
      figure: true,
      cell: (row) => row.volumeMl !== null && <span className="size">{measures.volume(row.volumeMl)}</span>,
    },
    {
      key: 'depth',
      header: say.columns.depth,
      figure: true,
      cell: (row) => row.depthMm !== null && <span className="size">{measures.length(row.depthMm)}</span>,
    },
    {
      key: 'footprint',
      header: say.columns.footprint,
      figure: true,
      cell: (row) =>
        row.widthMm !== null &&
        row.lengthMm !== null && (
          <span className="size">{say.footprint(measures.length(row.widthMm), measures.length(row.lengthMm))}</span>
        ),
    },
    {
      key: 'standing',
      header: say.columns.standing,
      cell: (row) => <StandingMark standing={row.standing} source={row.source} />,
    },
    { key: 'inUse', header: say.columns.inUse, cell: (row) => say.uses(row.inUse) },
  ];
}

export function ContainersTable({
  rows,
  onChange,
}: {
  rows: readonly contracts.ContainerRow[];
  onChange: (container: contracts.ContainerRow) => void;
}) {
  const { plants } = useMessages();
  const { mayBe } = useSession();
  const { measures } = useFormat();
  return (
    <DataTable
      caption={plants.containers.title}
      quietCaption
      rows={rows}
      rowId={(row) => row.id}
      rowName={(row) => row.name}
      columns={columnsIn({ plants, measures, onChange: mayBe(GROWERS) ? onChange : null })}
      empty={<EmptyState kind="nothing-yet" title={plants.containers.emptyTitle} />}
    />
  );
}
