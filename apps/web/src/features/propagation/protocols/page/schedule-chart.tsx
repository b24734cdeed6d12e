/** ScheduleChart: each stage as a bar at the usual pace, and over its beginning a thin line from the earliest day to the latest. */
import type { Schedules } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { scheduleScale } from './schedule-scale.ts';

const WIDTH = 360;
const LEFT = 122;
const RIGHT = 352;
const TOP = 22;
const ROW = 24;
const BAR = 10;
/** So that a stage that takes no time is seen. */
const LEAST = 3;

const xOf = (share: number): number => LEFT + share * (RIGHT - LEFT);

/** Long names are cut by the picture's edge; the first words tell them apart, and the table has them whole. */
const shortened = (name: string): string => (name.length > 18 ? `${name.slice(0, 17)}…` : name);

export function ScheduleChart({ schedules }: { schedules: Schedules }) {
  const { protocols: say, stages } = useMessages().propagation;
  const { dates } = useFormat();
  const { today } = useSession();
  const scale = scheduleScale(schedules, today);
  const height = TOP + scale.bars.length * ROW + 8;
  return (
    <svg
      className="schedule"
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={say.page.chart(scale.bars.length)}
    >
      {scale.ticks.map(({ on, at }) => (
        <g key={on}>
          <path className="schedule-rule" d={`M${xOf(at)} ${TOP - 4}V${height - 6}`} />
          <text className="schedule-word" x={xOf(at)} y={12} textAnchor={at > 0.92 ? 'end' : 'middle'}>
            {dates.month(on).replace(/^(\p{L}{3})\p{L}*\.?/u, '$1')}
          </text>
        </g>
      ))}
      {scale.today !== null && <path className="schedule-today" d={`M${xOf(scale.today)} ${TOP - 4}V${height - 6}`} />}
      {scale.bars.map(({ kind, from, to, earliest, latest }, index) => {
        const y = TOP + index * ROW;
        return (
          <g key={kind}>
            <text className="schedule-word" x={LEFT - 6} y={y + BAR} textAnchor="end">
              {shortened(stages.names[kind])}
            </text>
            <rect
              className="schedule-bar"
              x={xOf(from)}
              y={y}
              width={Math.max(LEAST, xOf(to) - xOf(from))}
              height={BAR}
              rx="2"
            />
            {latest > earliest && (
              <path
                className="schedule-span"
                d={`M${xOf(earliest)} ${y + BAR + 4}H${xOf(latest)}M${xOf(earliest)} ${y + BAR + 1}v6M${xOf(latest)} ${y + BAR + 1}v6`}
              />
            )}
          </g>
        );
      })}
    </svg>
  );
}
