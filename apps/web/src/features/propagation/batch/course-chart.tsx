/** CourseChart: what lives over the days since the start, as a line of counts. The same figures stand in the table under it. */
import { useFormat } from '../../../lib/format/index.ts';
import { useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { type CoursePoint, courseOf } from './course-scale.ts';
import './batch.css';

const WIDTH = 360;
const HEIGHT = 190;
const LEFT = 40;
const RIGHT = 344;
const TOP = 18;
const BASE = 150;
const MARKS = [0, 0.5, 1];

const xOf = (share: number): number => LEFT + share * (RIGHT - LEFT);
const yOf = (share: number): number => BASE - share * (BASE - TOP);

export function CourseChart({ counts, startedOn }: { counts: readonly CoursePoint[]; startedOn: string }) {
  const { page: say } = useMessages().propagation;
  const { numbers } = useFormat();
  const { today } = useSession();
  const course = courseOf(counts, startedOn, today);
  const line = course.points.map(({ x, y }) => `${xOf(x).toFixed(1)},${yOf(y).toFixed(1)}`).join(' ');
  return (
    <svg className="course" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={say.courseChart(counts.length)}>
      {MARKS.map((mark) => (
        <g key={mark}>
          <path className="course-rule" d={`M${LEFT} ${yOf(mark)}H${RIGHT}`} />
          <text className="course-figure" x={LEFT - 6} y={yOf(mark) + 4} textAnchor="end">{numbers.count(Math.round(mark * course.topUnits))}</text>
        </g>
      ))}
      {MARKS.map((mark) => (
        <text key={mark} className="course-figure" x={xOf(mark)} y={BASE + 17} textAnchor="middle">{numbers.count(Math.round(mark * course.lastDays))}</text>
      ))}
      <text className="course-word" x={(LEFT + RIGHT) / 2} y={HEIGHT - 4} textAnchor="middle">{say.courseDays}</text>
      <polyline className="course-line" points={line} />
      {course.points.map(({ x, y, point }, index) => (
        <circle key={`${point.on}-${index}`} className="course-point" cx={xOf(x)} cy={yOf(y)} r="4" />
      ))}
    </svg>
  );
}
