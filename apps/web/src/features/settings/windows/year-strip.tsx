/** The planting windows drawn along one year, a row for each kind of plants, with today and the freeze day. The list below says the same in words. */
import { useMessages } from '../../../messages/index.ts';
import { useMonthNames } from '../../plants/facts/fact-value.tsx';
import { DAYS_ON_STRIP, placeOf, stretchesOf } from './strip-shape.ts';
import '../settings.css';

export interface StripRow {
  key: string;
  label: string;
  windows: readonly { id: string; opensMd: string; closesMd: string }[];
}

const ROW = 22;
const LABEL = 18;
const HEAD = 20;
const SCALE = 2;

export function YearStrip({ rows, freezeMd, today }: { rows: readonly StripRow[]; freezeMd: string; today: string }) {
  const { windows: say } = useMessages().rules;
  const months = useMonthNames('narrow');
  const width = DAYS_ON_STRIP * SCALE;
  const foot = HEAD + rows.length * (ROW + LABEL);
  const starts = months.map((_, index) => placeOf(`${String(index + 1).padStart(2, '0')}-01`) * SCALE);
  const marks = [
    { key: 'today', at: placeOf(today.slice(5)) * SCALE, label: say.today, look: 'year-strip-mark' },
    { key: 'freeze', at: placeOf(freezeMd) * SCALE, label: say.freeze, look: 'year-strip-freeze' },
  ];
  return (
    <svg className="year-strip" viewBox={`-2 0 ${width + 4} ${foot + LABEL * 2}`} role="img" aria-label={say.strip}>
      {starts.map((x, index) => (
        <g key={x}>
          <line className="year-strip-tick" x1={x} x2={x} y1={HEAD - 4} y2={foot} />
          <text className="year-strip-month" x={x + 30} y={HEAD - 6}>
            {months[index]}
          </text>
        </g>
      ))}
      {rows.map((row, index) => {
        const top = HEAD + index * (ROW + LABEL);
        return (
          <g key={row.key}>
            <text className="year-strip-label" x={4} y={top + 13}>
              {row.label}
            </text>
            <rect className="year-strip-row" x={0} y={top + LABEL} width={width} height={ROW - 4} />
            {row.windows.flatMap((window) => stretchesOf(window.opensMd, window.closesMd).map(({ from, days }) => (
              <rect key={`${window.id}-${from}`} className="year-strip-open" x={from * SCALE} y={top + LABEL} width={days * SCALE} height={ROW - 4} />
            )))}
          </g>
        );
      })}
      {marks.map((mark, index) => (
        <g key={mark.key}>
          <line className={mark.look} x1={mark.at} x2={mark.at} y1={HEAD} y2={foot + 4 + index * LABEL} />
          <text className="year-strip-label" x={mark.at} y={foot + LABEL + index * LABEL} textAnchor={mark.at > width * 0.8 ? 'end' : 'start'}>
            {mark.label}
          </text>
        </g>
      ))}
    </svg>
  );
}
