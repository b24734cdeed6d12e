/** Where a lot or batch could go: the open lines that accept it, those it serves first, and what would have to change for others. */
import type { promises } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { trpc } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { paths } from '../../lib/paths.ts';
import { Read } from '../../lib/read/index.ts';
import { useMessages } from '../../messages/index.ts';
import { ButtonLink } from '../../ui/action/index.ts';
import { Badge, EmptyState } from '../../ui/feedback/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import type { BoardRow } from './board-data.ts';

export function OfferSheet({ row, onClose }: { row: BoardRow; onClose: () => void }) {
  const { board } = useMessages();
  const { dates } = useFormat();
  const query = useQuery(trpc.promises.demandFor.queryOptions({ supplyId: row.id }));
  return (
    <Sheet open onClose={onClose} title={board.offerTitle(row.code)}>
      <Read query={query}>
        {({ lines }) =>
          lines.length === 0 ? (
            <EmptyState
              kind="nothing-yet"
              title={board.offerNone}
              actions={
                <ButtonLink
                  to={paths.newOrder()}
                  search={row.kind === 'lot' ? { lot: row.id } : { plant: row.plantId }}
                  look="primary"
                >
                  {board.actions.plant}
                </ButtonLink>
              }
            />
          ) : (
            <ul className="board-list">
              {[...lines]
                .sort((a, b) => Number(b.serves) - Number(a.serves))
                .map((line) => (
                  <li key={line.lineId} className="panel">
                    <p>
                      <Link to={paths.order(line.orderId)} className="link">
                        {line.orderCode}
                      </Link>{' '}
                      {line.clientName}, <span className="figure">{dates.long(line.dueOn)}</span>
                    </p>
                    <p>
                      <i>{line.scientificName}</i>, {line.containerCode}:{' '}
                      <span className="figure">{board.offerShort(line.shortUnits)}</span>
                      {line.reservedHereUnits > 0 && (
                        <span className="figure">, {board.offerHere(line.reservedHereUnits)}</span>
                      )}
                    </p>
                    <Badge shape={line.serves ? 'full' : 'open'}>
                      {line.serves ? board.offerServes : board.offerNot}
                    </Badge>
                    {line.needs && <Needs row={row} line={line} needs={line.needs} />}
                  </li>
                ))}
            </ul>
          )
        }
      </Read>
    </Sheet>
  );
}

/** What the order would have to be like for these plants to serve it, and how many could go there. */
function Needs({ row, line, needs }: { row: BoardRow; line: promises.DemandRow; needs: promises.DemandNeeds }) {
  const { board } = useMessages();
  const words = board.offerNeeds;
  if (needs.isTooLate) return <p>{words.tooLate}</p>;
  return (
    <div>
      <p>{words.title}</p>
      <ul className="plain-list">
        {needs.alternative && <li>{words.alternative(row.scientificName, row.containerName)}</li>}
        {needs.conditions.map((reason) => (
          <li key={reason}>{words.conditions[reason]}</li>
        ))}
        {needs.fromOn && <li>{words.fromOn(needs.fromOn)}</li>}
        {needs.untilOn && <li>{words.untilOn(needs.untilOn)}</li>}
      </ul>
      {line.savedUnits > 0 && <p className="figure">{board.offerCouldGo(line.savedUnits)}</p>}
    </div>
  );
}
