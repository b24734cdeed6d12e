/** CourseChart: what lives over the days since the start, beside earlier batches in lines of dashes. The same figures stand in the tables under it. */
import { line } from 'd3-shape';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { Course, CourseLine } from './course-scale.ts';
import './course.css';

const WIDTH = 360;
const HEIGHT = 190;
const LEFT = 44;
const RIGHT = 344;
const TOP = 18;
const BASE = 150;
const MARKS = [0, 0.5, 1];

const xOf = (share: number): number => LEFT + share * (RIGHT - LEFT);
const yOf = (share: number): number => BASE - share * (BASE - TOP);
const draw = line<Pick<CourseLine['points'][number], 'x' | 'y'>>(
  ({ x }) => xOf(x),
  ({ y }) => yOf(y),
).digits(1);
// Every batch began with nothing up.
const pathOf = ({ points }: CourseLine): string => draw([{ x: 0, y: 0 }, ...points]) ?? '';

/** The dashes by which earlier batches are told apart, in the order they are listed. */
const DASHES = ['7 3', '2 3', '10 3 2 3', '4 2', '1 4'];
const dashOf = (index: number): string => DASHES[index % DASHES.length] ?? '';

export function CourseChart({ course }: { course: Course }) {
  const { course: say } = useMessages().propagation;
  const { numbers } = useFormat();
  const height = (mark: number) =>
    course.inShares ? numbers.share((mark * course.top) / 100) : numbers.count(Math.round(mark * course.top));
  return (
    <svg
      className="course"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={say.chart(course.own.points.length, course.earlier.length)}
    >
      {MARKS.map((mark) => (
        <g key={mark}>
          <path className="course-rule" d={`M${LEFT} ${yOf(mark)}H${RIGHT}`} />
          <text className="course-figure" x={LEFT - 6} y={yOf(mark) + 4} textAnchor="end">
            {height(mark)}
          </text>
        </g>
      ))}
      {MARKS.map((mark) => (
        <text key={mark} className="course-figure" x={xOf(mark)} y={BASE + 17} textAnchor="middle">
          {numbers.count(Math.round(mark * course.lastDays))}
        </text>
      ))}
      <text className="course-word" x={(LEFT + RIGHT) / 2} y={HEIGHT - 4} textAnchor="middle">
        {say.days}
      </text>
      {course.earlier.map((each, index) => (
        <path key={each.code} className="course-earlier" strokeDasharray={dashOf(index)} d={pathOf(each)} />
      ))}
      <path className="course-line" d={pathOf(course.own)} />
      {course.own.points.map(({ x, y, on }, index) => (
        <circle key={`${on}-${index}`} className="course-point" cx={xOf(x)} cy={yOf(y)} r="4" />
      ))}
    </svg>
  );
}

/** The line a batch has in the chart, for the table that names it. */
export function LineSample({ index }: { index: number }) {
  return (
    <svg className="course-sample" viewBox="0 0 34 8" aria-hidden="true">
      <path className="course-earlier" strokeDasharray={dashOf(index)} d="M1 4H33" />
    </svg>
  );
}
