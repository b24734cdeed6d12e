/** The planting windows drawn along one year, a row for each kind of plants, with today and the freeze day. The list below says the same in words. */
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { useMonthNames } from '../../plants/facts/fact-value.tsx';
import { DAYS_ON_STRIP, placeOf, stretchesOf } from './strip-shape.ts';
import '../settings.css';

export interface StripRow {
  key: string;
  label: string;
  windows: readonly { id: string; opensMd: string; closesMd: string }[];
}

const MONTH_STARTS = Array.from({ length: 12 }, (_, index) => placeOf(`${String(index + 1).padStart(2, '0')}-01`));
const HEIGHT = 10;

export function YearStrip({ rows, freezeMd, today }: { rows: readonly StripRow[]; freezeMd: string; today: string }) {
  const { windows: say } = useMessages().rules;
  const { dates } = useFormat();
  const months = useMonthNames('narrow');
  const widths = MONTH_STARTS.map((start, index) => `${(MONTH_STARTS[index + 1] ?? DAYS_ON_STRIP) - start}fr`).join(
    ' ',
  );
  const todayMd = today.slice(5);
  return (
    <figure className="year-strip" role="img" aria-label={say.strip}>
      <div className="year-strip-months" style={{ gridTemplateColumns: widths }} aria-hidden="true">
        {months.map((name, index) => (
          <span key={index}>{name}</span>
        ))}
      </div>
      {rows.map((row) => (
        <div key={row.key} className="year-strip-row" aria-hidden="true">
          <p>{row.label}</p>
          {/* Stretched in one direction only: its lines keep their width and no text stands in it. */}
          <svg viewBox={`0 0 ${DAYS_ON_STRIP} ${HEIGHT}`} preserveAspectRatio="none">
            <rect className="year-strip-ground" width={DAYS_ON_STRIP} height={HEIGHT} />
            {row.windows.flatMap((window) =>
              stretchesOf(window.opensMd, window.closesMd).map(({ from, days }) => (
                <rect key={`${window.id}-${from}`} className="year-strip-open" x={from} width={days} height={HEIGHT} />
              )),
            )}
            {MONTH_STARTS.slice(1).map((x) => (
              <line key={x} className="year-strip-tick" x1={x} x2={x} y2={HEIGHT} />
            ))}
            <line className="year-strip-freeze" x1={placeOf(freezeMd)} x2={placeOf(freezeMd)} y2={HEIGHT} />
            <line className="year-strip-today" x1={placeOf(todayMd)} x2={placeOf(todayMd)} y2={HEIGHT} />
          </svg>
        </div>
      ))}
      <div className="year-strip-key" aria-hidden="true">
        <Key look="year-strip-today">{`${say.today}, ${dates.yearly(todayMd)}`}</Key>
        <Key look="year-strip-freeze">{`${say.freeze}, ${dates.yearly(freezeMd)}`}</Key>
      </div>
    </figure>
  );
}

function Key({ look, children }: { look: string; children: string }) {
  return (
    <span>
      <svg viewBox="0 0 4 20">
        <line className={look} x1="2" x2="2" y2="20" />
      </svg>
      {children}
    </span>
  );
}
