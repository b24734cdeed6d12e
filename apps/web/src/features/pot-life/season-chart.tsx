/** SeasonChart: plants by the week in which they must be out, over the planting windows, so that a season is seen at a look. */
import { addDays, daysBetween, monthDayIn } from '@rootclock/domain';
import { useFormat } from '../../lib/format/index.ts';
import { monthStarts } from '../../lib/month-starts.ts';
import { useMessages } from '../../messages/index.ts';
import { Section } from '../../ui/layout/index.ts';
import type { Board } from './board-data.ts';

const WIDTH = 440;
const HEIGHT = 96;
const BEFORE = 60;

export function SeasonChart({ board }: { board: Board }) {
  const { board: say } = useMessages();
  const { dates, numbers } = useFormat();
  if (board.weeks.length === 0) return null;
  const firstOn = addDays(board.today, -BEFORE);
  const at = (on: string) => Math.min(WIDTH, Math.max(0, daysBetween(firstOn, on)));
  const most = Math.max(...board.weeks.map(({ units }) => units));
  const high = (units: number) => (units / most) * (HEIGHT - 26);
  const total = board.weeks.reduce((sum, { units }) => sum + units, 0);
  const free = board.weeks.reduce((sum, { freeUnits }) => sum + freeUnits, 0);
  const year = Number(firstOn.slice(0, 4));
  const windows = [year - 1, year, year + 1].flatMap((each) =>
    board.windows.map(({ opensMd, closesMd }) => ({
      from: monthDayIn(each, opensMd),
      to: monthDayIn(closesMd < opensMd ? each + 1 : each, closesMd),
    })),
  );
  // The last is left out where its name would run over the edge.
  const months = monthStarts(firstOn, addDays(firstOn, WIDTH - 13));
  return (
    <Section title={say.chart}>
      <svg
        className="season"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={say.chartNote(free, total)}
        preserveAspectRatio="none"
      >
        {windows
          .filter(({ from, to }) => at(to) > at(from))
          .map(({ from, to }) => (
            <rect
              key={from}
              className="season-window"
              x={at(from)}
              y={0}
              width={at(to) - at(from)}
              height={HEIGHT - 14}
            />
          ))}
        {board.weeks.map(({ weekOn, units, freeUnits }) => (
          <g key={weekOn}>
            <rect
              className="season-promised"
              x={at(weekOn)}
              y={HEIGHT - 14 - high(units)}
              width={6}
              height={high(units)}
            />
            <rect
              className="season-free"
              x={at(weekOn)}
              y={HEIGHT - 14 - high(freeUnits)}
              width={6}
              height={high(freeUnits)}
            >
              <title>{say.chartWeek(dates.short(weekOn), units, freeUnits)}</title>
            </rect>
          </g>
        ))}
        <line className="season-today" x1={BEFORE} x2={BEFORE} y1={0} y2={HEIGHT - 14} />
        <line className="season-base" x1={0} x2={WIDTH} y1={HEIGHT - 14} y2={HEIGHT - 14} />
        {months.map((on) => (
          <line key={on} className="season-base" x1={at(on)} x2={at(on)} y1={HEIGHT - 14} y2={HEIGHT - 10} />
        ))}
      </svg>
      <p className="season-months" aria-hidden="true">
        {months
          .filter((_, i) => i % 2 === 0)
          .map((on) => (
            <span key={on} style={{ left: `${(at(on) / WIDTH) * 100}%` }}>
              {dates.month(on)}
            </span>
          ))}
      </p>
      <p className="board-why">{say.chartNote(free, total)}</p>
      <details>
        <summary>{say.chartTable}</summary>
        <table className="season-table">
          <thead>
            <tr>
              <th scope="col">{say.week}</th>
              <th scope="col">{say.weekUnits}</th>
              <th scope="col">{say.weekFree}</th>
            </tr>
          </thead>
          <tbody>
            {board.weeks.map(({ weekOn, units, freeUnits }) => (
              <tr key={weekOn}>
                <th scope="row">{dates.long(weekOn)}</th>
                <td>{numbers.count(units)}</td>
                <td>{numbers.count(freeUnits)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </Section>
  );
}
