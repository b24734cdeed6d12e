/** TestsChart: the mean of each test over time with the span of its replicates. A test to be repeated is an open triangle. */
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { SourceStory } from '../source-story.ts';
import { drawTests } from './tests-scale.ts';
import './viability.css';

const WIDTH = 360;
const HEIGHT = 170;
const LEFT = 44;
const RIGHT = 346;
const TOP = 12;
const BASE = 138;
const MARKS = [0, 0.5, 1];

const xOf = (share: number): number => LEFT + 8 + share * (RIGHT - LEFT - 16);
const yOf = (share: number): number => BASE - share * (BASE - TOP);

export function TestsChart({
  tests,
  gatheredOn,
}: {
  tests: NonNullable<SourceStory['seed']>['tests'];
  gatheredOn: string | null;
}) {
  const { seed } = useMessages();
  const { dates, numbers } = useFormat();
  const { today } = useSession();
  const { fromOn, points } = drawTests(
    tests.filter(({ withdrawn }) => !withdrawn),
    gatheredOn,
    today,
  );
  if (points.length === 0) return null;
  return (
    <svg className="tests-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={seed.chart(points.length)}>
      {MARKS.map((mark) => (
        <g key={mark}>
          <path className="tests-rule" d={`M${LEFT} ${yOf(mark)}H${RIGHT}`} />
          <text className="tests-word" x={LEFT - 6} y={yOf(mark) + 4} textAnchor="end">
            {numbers.share(mark)}
          </text>
        </g>
      ))}
      <text className="tests-word" x={LEFT} y={BASE + 20} textAnchor="start">
        {dates.short(fromOn)}
      </text>
      {fromOn < today && (
        <text className="tests-word" x={RIGHT} y={BASE + 20} textAnchor="end">
          {dates.short(today)}
        </text>
      )}
      {points.map(({ test, x, mean, low, high }) => (
        <g key={test.testId}>
          <path
            className="tests-span"
            d={`M${xOf(x)} ${yOf(low)}V${yOf(high)}M${xOf(x) - 4} ${yOf(low)}h8M${xOf(x) - 4} ${yOf(high)}h8`}
          />
          {test.toRepeat ? (
            <path className="tests-doubt" d={`M${xOf(x)} ${yOf(mean) - 6}l6 11h-12z`} />
          ) : (
            <circle className="tests-point" cx={xOf(x)} cy={yOf(mean)} r="5" />
          )}
        </g>
      ))}
    </svg>
  );
}
