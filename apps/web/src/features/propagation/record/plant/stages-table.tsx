/** StagesTable: the stages of one method and one name of protocol, each with its bar, what was counted and what the protocol says. */
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { StandingMark } from '../../../../ui/sign/index.ts';
import { type Column, DataTable } from '../../../../ui/table/index.ts';
import { shapesInAll, shareInAll, type ShownStage, shownStages, tells, type Weighing } from '../learned.ts';
import type { RecordedShares } from '../record-data.ts';
import { ShareBar } from '../share-bar.tsx';

export function StagesTable({ shares, settings }: { shares: RecordedShares; settings: Weighing }) {
  const { record: say, propagation } = useMessages();
  const { numbers } = useFormat();
  const columns = useStageColumns();
  const stages = shownStages(shares, settings).filter(tells);
  const shapes = shapesInAll(shares, settings);
  const inAll = shapes && shareInAll(shapes);
  const title = say.sharesOf(propagation.methods[shares.method], shares.label);
  return (
    <div className="record-part">
      <h3>{title}</h3>
      <p className="record-note">
        {shares.protocol ? (
          <TextLink to={paths.protocol(shares.protocol.protocolId)}>{shares.label || say.usual}</TextLink>
        ) : (
          say.noProtocol
        )}
      </p>
      <DataTable
        caption={title}
        quietCaption
        rows={stages}
        rowId={(row) => row.stage}
        rowName={(row) => propagation.stages.names[row.stage]}
        empty={<p>{say.notCounted}</p>}
        columns={columns}
      />
      {inAll && (
        <p>
          <strong>
            {say.inAll}: {numbers.share(inAll.share)}
          </strong>
          , {say.inAllHint(numbers.share(inAll.low), numbers.share(inAll.high))}
        </p>
      )}
    </div>
  );
}

function useStageColumns(): Column<ShownStage>[] {
  const { record: say, propagation } = useMessages();
  const { numbers } = useFormat();
  return [
    {
      key: 'stage',
      header: say.stage,
      title: true,
      cell: (row) => (
        <>
          {propagation.stages.names[row.stage]}
          {row.covers.length > 0 && (
            <span className="share-words">
              {' '}
              {say.covers(row.covers.map((kind) => propagation.stages.names[kind].toLowerCase()).join(', '))}
            </span>
          )}
        </>
      ),
    },
    {
      key: 'believed',
      header: say.believed,
      cell: (row) => (
        <div className="share-cell">
          <span className="share-figure">{numbers.share(row.share)}</span>
          <ShareBar stage={row} />
        </div>
      ),
    },
    {
      key: 'counted',
      header: say.countsColumn,
      cell: (row) => (
        <div className="share-cell">
          <span>
            {row.tried === 0
              ? say.priorAlone
              : say.counts(numbers.count(row.passed), numbers.count(row.tried), row.what, row.batches)}
          </span>
          {row.tried > 0 && (
            <span className="share-words">{say.interval(numbers.share(row.low), numbers.share(row.high))}</span>
          )}
          {row.over > 0 && <span className="share-words">{say.over(row.over)}</span>}
        </div>
      ),
    },
    {
      key: 'protocol',
      header: say.protocolColumn,
      cell: (row) =>
        row.prior && (
          <>
            {numbers.share(row.prior.share)} <StandingMark standing={row.prior.standing} source={row.prior.source} />
          </>
        ),
    },
  ];
}
