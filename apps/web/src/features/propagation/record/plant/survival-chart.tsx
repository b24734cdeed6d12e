/** SurvivalChart: the share alive over days in the pot as steps, with its band, and the pot-life limit as a dashed line with a word. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { PotSurvival } from '../record-data.ts';
import { bandOf, heldUntil, survivalPaths } from './survival-shape.ts';

const WIDTH = 400;
const HEIGHT = 224;
const LEFT = 44;
const RIGHT = 392;
const TOP = 22;
const BASE = 178;
const MARKS = [0, 0.5, 1];

const yOf = (share: number): number => BASE - share * (BASE - TOP);

export function SurvivalChart({ curve }: { curve: PotSurvival }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const [limit] = curve.limits;
  const most = Math.max(1, curve.lastDays, limit?.days ?? 0);
  const xOf = (days: number): number => LEFT + (days / most) * (RIGHT - LEFT);
  const drawn = survivalPaths(heldUntil(bandOf(curve.steps), curve.lastDays), { xOf, yOf });
  return (
    <svg
      className="record-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={say.survivalChart(curve.containerName, curve.plants, curve.died)}
    >
      {curve.steps.length > 0 && <path className="record-band" d={drawn.band} />}
      {MARKS.map((mark) => (
        <g key={mark}>
          <path className="record-rule" d={`M${LEFT} ${yOf(mark)}H${RIGHT}`} />
          <text x={LEFT - 6} y={yOf(mark) + 4} textAnchor="end">
            {numbers.share(mark)}
          </text>
          <text x={xOf(mark * most)} y={BASE + 17} textAnchor={mark === 1 ? 'end' : 'middle'}>
            {numbers.count(Math.round(mark * most))}
          </text>
        </g>
      ))}
      <path className="record-line" d={drawn.curve} />
      {limit && (
        <>
          <path className="record-limit" d={`M${xOf(limit.days)} ${TOP}V${BASE}`} />
          <text x={xOf(limit.days)} y={TOP - 7} textAnchor={limit.days > most * 0.8 ? 'end' : 'middle'}>
            {say.limitMark}: {numbers.count(limit.days)}
          </text>
        </>
      )}
      <text x={(LEFT + RIGHT) / 2} y={HEIGHT - 8} textAnchor="middle">
        {say.daysInPot}
      </text>
    </svg>
  );
}
