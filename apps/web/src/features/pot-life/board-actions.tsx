/** What can be done with a row of the board. A larger pot is offered only where it starts the binding clock anew. */
import { GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc, useSession } from '../../lib/api/index.ts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { Button, ButtonLink } from '../../ui/action/index.ts';
import { ObserveSheet } from '../stock/lots/bulk/observe-sheet.tsx';
import { LeaveSheet } from '../stock/lots/sheets/leave-sheet.tsx';
import { PotUpSheet } from '../stock/lots/sheets/pot-up-sheet.tsx';
import type { BoardRow } from './board-data.ts';
import { OfferSheet } from './offer-sheet.tsx';

type Work = 'rootBall' | 'offer' | 'potUp' | 'give';

export function BoardActions({ row }: { row: BoardRow }) {
  const { board } = useMessages();
  const { mayBe } = useSession();
  const [work, setWork] = useState<Work | null>(null);
  const close = () => setWork(null);
  const isHeld = row.holds.length > 0;
  const offered: Work[] =
    row.kind === 'batch'
      ? ['offer']
      : [
          ...(row.rootCheckedOn ? [] : (['rootBall'] as const)),
          'offer',
          ...(row.potUpHelps ? (['potUp'] as const) : []),
          ...(isHeld ? [] : (['give'] as const)),
        ];
  return (
    <div className="board-actions row">
      {offered.map((each) => (
        <Button key={each} onClick={() => setWork(each)}>
          {board.actions[each]}
          <span className="only-heard"> {row.code}</span>
        </Button>
      ))}
      {row.freeUnits > 0 && mayBe(GROWERS) && (
        <ButtonLink to={paths.newOrder()} search={row.kind === 'lot' ? { lot: row.id } : { plant: row.plantId }}>
          {board.actions.plant}
          <span className="only-heard"> {row.code}</span>
        </ButtonLink>
      )}
      {row.rule?.basis === 'confined' && row.kind === 'lot' && <p className="board-why">{board.potUpNoHelp}</p>}
      {work === 'rootBall' && (
        <ObserveSheet target={{ lotIds: [row.id], name: row.code }} kind="root-ball" onClose={close} onDone={close} />
      )}
      {work === 'offer' && <OfferSheet row={row} onClose={close} />}
      {(work === 'potUp' || work === 'give') && <SheetOverLot lotId={row.id} work={work} onClose={close} />}
    </div>
  );
}

/** These two need the whole lot, which is read only when somebody asks for them. */
function SheetOverLot({ lotId, work, onClose }: { lotId: string; work: 'potUp' | 'give'; onClose: () => void }) {
  const { data } = useQuery(trpc.stock.readLot.queryOptions({ lotId }));
  if (!data) return null;
  return work === 'potUp' ? (
    <PotUpSheet lot={data} onClose={onClose} />
  ) : (
    <LeaveSheet lot={data} onClose={onClose} kind="give" />
  );
}
