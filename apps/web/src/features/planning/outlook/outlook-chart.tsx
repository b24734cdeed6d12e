/** OutlookChart: two lines of what can go out, cautious and usual, and under them bars of what is wanted, with what is lacking filled. */
import { curveStepAfter, line } from 'd3-shape';
import { useMessages } from '../../../messages/index.ts';
import { MonthScale } from '../month-scale.tsx';
import type { Outlook } from './outlook-data.ts';

type Week = NonNullable<Outlook['chosen']>['weeks'][number];
const HEIGHT = 120;
const STEP = 8;

export function OutlookChart({ weeks, label }: { weeks: readonly Week[]; label: string }) {
  const { legend, chartTop } = useMessages().planning.outlook;
  const wanted = ({ orders, expected }: Week) => orders + expected;
  const top = Math.max(1, ...weeks.flatMap((week) => [week.cautious, week.usual, wanted(week)]));
  const y = (units: number) => HEIGHT - (units / top) * (HEIGHT - 4);
  const steps = line<number>((_, at) => at * STEP, y).curve(curveStepAfter);
  /** What a week has it has until its end. */
  const path = (of: (week: Week) => number) => steps([...weeks, ...weeks.slice(-1)].map(of)) ?? '';
  return (
    <div>
      <p className="weeks-top">{chartTop(top)}</p>
      <svg
        className="weeks-chart"
        viewBox={`0 0 ${weeks.length * STEP} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={label}
      >
        {weeks.map(
          (week, at) =>
            wanted(week) > 0 && (
              <g key={week.startsOn}>
                <rect
                  className="weeks-outlined"
                  x={at * STEP + 1}
                  width={STEP - 2}
                  y={y(wanted(week))}
                  height={HEIGHT - y(wanted(week))}
                />
                <rect
                  className="weeks-short"
                  x={at * STEP + 1}
                  width={STEP - 2}
                  y={y(wanted(week))}
                  height={y(wanted(week) - week.shortCautious) - y(wanted(week))}
                />
              </g>
            ),
        )}
        <path className="weeks-dashed" d={path(({ usual }) => usual)} />
        <path className="weeks-line" d={path(({ cautious }) => cautious)} />
        <line className="weeks-base" x1={0} x2={weeks.length * STEP} y1={HEIGHT} y2={HEIGHT} />
      </svg>
      <MonthScale weeks={weeks} />
      <ul className="weeks-legend">
        <li>
          <span className="weeks-key weeks-line" aria-hidden="true" />
          {legend.cautious}
        </li>
        <li>
          <span className="weeks-key weeks-dashed" aria-hidden="true" />
          {legend.usual}
        </li>
        <li>
          <span className="weeks-key weeks-outlined" aria-hidden="true" />
          {legend.demand}
        </li>
        <li>
          <span className="weeks-key weeks-short" aria-hidden="true" />
          {legend.short}
        </li>
      </ul>
    </div>
  );
}
