/** BoardCard: one lot or batch on the board: its clock, why, what is promised of it, and what can be done. */
import { FIELD } from '@rootclock/domain';
import { Link } from '@tanstack/react-router';
import { useSession } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { Callout } from '../../ui/feedback/index.ts';
import { StandingMark } from '../../ui/sign/index.ts';
import { BoardActions } from './board-actions.tsx';
import { BoardClock } from './board-clock.tsx';
import type { BoardRow } from './board-data.ts';
import { useRowSentence } from './row-words.ts';

export function BoardCard({ row }: { row: BoardRow }) {
  const { board } = useMessages();
  const { dates, numbers } = useFormat();
  const { mayBe } = useSession();
  const sentence = useRowSentence()(row);
  const facts = [
    board.units[row.unit](row.onHandUnits),
    row.stagedUnits > 0 && board.staged(row.stagedUnits),
    row.containerName,
    row.places
      .map(({ code, units }) => (row.places.length === 1 ? code : `${code} (${numbers.count(units)})`))
      .join(', '),
  ].filter(Boolean);
  return (
    <li className="board-card panel">
      <BoardClock row={row} />
      <div className="board-what">
        <p className="board-name">
          <Link to={row.kind === 'lot' ? paths.lot(row.id) : paths.batch(row.id)} className="link">
            {row.code}
          </Link>{' '}
          <i>{row.scientificName}</i>
          {row.kind === 'batch' && ` (${board.batch})`}
        </p>
        <p className="figure">{facts.join(' · ')}</p>
        <p className="figure">
          {row.holds.length > 0 ? board.held : `${board.promised(row.reservedUnits)}, ${board.free(row.freeUnits)}`}
        </p>
        {sentence && row.rule && (
          <p className="board-why">
            {sentence}{' '}
            {row.window && `${board.window(dates.yearly(row.window.opensMd), dates.yearly(row.window.closesMd))} `}
            <StandingMark standing={row.rule.standing} source={row.rule.source} />
            {row.clockAssumed && ` (${board.assumed})`}
          </p>
        )}
        {row.kind === 'lot' && (
          <p className="board-why">
            {row.rootCheckedOn
              ? board.checked(dates.short(row.rootCheckedOn))
              : board.notChecked(row.readyOn && dates.short(row.readyOn))}
          </p>
        )}
        {row.state === 'no-window' && (
          <Callout tone="caution">{board.noWindow(row.nextOpensOn && dates.long(row.nextOpensOn))}</Callout>
        )}
        {row.state === 'winter-carry' && row.limitOn && (
          <Callout tone="note">{board.carry(dates.long(row.limitOn))}</Callout>
        )}
        {row.dormant && (
          <p className="board-dormant">{board.dormant(row.lastEmergenceMd && dates.yearly(row.lastEmergenceMd))}</p>
        )}
        {mayBe(FIELD) && <BoardActions row={row} />}
      </div>
    </li>
  );
}
