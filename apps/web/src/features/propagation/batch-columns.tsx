/** The columns of the list of batches. On a phone each batch is a card: its code and plant, then what stands, came up and must leave. */
import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';
import { useFormat } from '../../lib/format/index.ts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { RowLink } from '../../ui/action/index.ts';
import { Badge } from '../../ui/feedback/index.ts';
import type { Column } from '../../ui/table/index.ts';
import { isUnitOnePlant } from '@rootclock/domain';
import { PotLifeMark, tiedOf } from './pot-life-mark.tsx';

type Row = inferRouterOutputs<AppRouter>['propagation']['listBatches']['rows'][number];

export function useBatchColumns(): Column<Row>[] {
  const { propagation } = useMessages();
  const { dates } = useFormat();
  const { list: say } = propagation;

  const alive = (row: Row): string => {
    if (row.emergedUnits === null || row.emergedOn === null) return say.notYet(row.daysSinceStart);
    const on = dates.short(row.emergedOn);
    return isUnitOnePlant(row.unit) && row.standingUnits >= row.emergedUnits
      ? say.aliveShare(row.emergedUnits, row.standingUnits, on)
      : say.aliveOf(row.emergedUnits, on);
  };
  const expected = (row: Row) => {
    if (row.cautiousUnits === 0) return say.notExpected;
    return (
      <>
        {row.targetContainerName
          ? say.expected(row.cautiousUnits, row.targetContainerName)
          : say.expectedBare(row.cautiousUnits)}
        {row.readyOn && <>, {say.readyBy(dates.short(row.readyOn))}</>}
        {row.reservedUnits > 0 && (
          <>
            {' '}
            <Badge shape="tied">{say.held(row.reservedUnits)}</Badge>
          </>
        )}
      </>
    );
  };

  const stage = (row: Row) => {
    if (row.stageKind === null) return null;
    return (
      <>
        {propagation.stages.names[row.stageKind]}
        {row.stageLate && (
          <>
            {' '}
            <Badge shape="over">{propagation.stages.states.late}</Badge>
          </>
        )}
        {row.stageDueOn !== null && row.closedOn === null && <>, {say.nextStep(dates.short(row.stageDueOn))}</>}
      </>
    );
  };

  return [
    {
      key: 'code',
      header: say.batch,
      title: true,
      sortable: true,
      cell: (row) => (
        <>
          <RowLink to={paths.batch(row.batchId)}>{row.code}</RowLink> <i lang="la">{row.scientificName}</i>
          {row.secondWinterOn && (
            <>
              {' '}
              <Badge shape="hatched">{say.secondWinter}</Badge>
            </>
          )}
        </>
      ),
    },
    {
      key: 'units',
      header: say.stands,
      sortable: true,
      cell: (row) => `${propagation.units(row.standingUnits, row.unit)}, ${propagation.methods[row.method]}`,
    },
    {
      key: 'startedOn',
      header: say.started,
      sortable: true,
      wideOnly: true,
      cell: (row) => dates.short(row.startedOn),
    },
    { key: 'stageDue', header: say.stage, sortable: true, cell: stage },
    { key: 'alive', header: say.alive, cell: alive },
    {
      key: 'plantBy',
      header: say.plantBy,
      sortable: true,
      cell: (row) => <PotLifeMark life={row} tied={tiedOf(row.reservedUnits, row.cautiousUnits)} />,
    },
    { key: 'readyOn', header: say.promise, sortable: true, cell: expected },
    { key: 'place', header: say.place, cell: (row) => row.placeCodes.join(', ') },
  ];
}
