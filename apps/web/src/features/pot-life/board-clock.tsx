/** BoardClock: the pot sign beside the band's word, the days and the plant-by day. */
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { PotSign } from '../../ui/sign/index.ts';
import { type BoardRow, tiedOf } from './board-data.ts';
import './board.css';

export function BoardClock({ row, size = 44 }: { row: BoardRow; size?: number }) {
  const { board } = useMessages();
  const { dates } = useFormat();
  const days =
    row.daysLeft === null ? null : row.daysLeft < 0 ? board.daysOver(-row.daysLeft) : board.daysLeft(row.daysLeft);
  const without = row.kind === 'batch' && row.clockOn === null ? board.noClockYet : board.noLimit;
  return (
    <span className="board-clock">
      <PotSign share={row.share} past={row.band === 'past'} dormant={row.dormant} tied={tiedOf(row)} size={size} />
      <span className="board-clock-words">
        <b className={`board-band board-band-${row.band}`}>
          {row.state === 'no-window' || row.state === 'winter-carry'
            ? `${board.bands[row.band]}, ${board.states[row.state]}`
            : board.bands[row.band]}
        </b>
        {row.plantByOn && days ? (
          <span className="figure">
            <time dateTime={row.plantByOn}>{board.plantBy(dates.short(row.plantByOn))}</time>, {days}
          </span>
        ) : (
          <span>{without}</span>
        )}
      </span>
    </span>
  );
}
