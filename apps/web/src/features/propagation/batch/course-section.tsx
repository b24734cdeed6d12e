/** What has come up or rooted: the chart for those who look, the table for those who read. */
import { daysBetween } from '@rootclock/domain';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';
import { CourseChart } from './course-chart.tsx';

/** A line needs two ends. */
const FEWEST_FOR_A_LINE = 2;

export function CourseSection({ batch }: { batch: BatchPageData }) {
  const { page: say, sheet } = useMessages().propagation;
  const { dates, numbers } = useFormat();
  return (
    <Section title={say.courseTitle}>
      {batch.course.length === 0 && <p>{say.courseEmpty}</p>}
      {batch.course.length >= FEWEST_FOR_A_LINE && <CourseChart counts={batch.course} startedOn={batch.startedOn} />}
      {batch.course.length > 0 && (
        <table className="course-table">
          <thead>
            <tr>
              <th scope="col">{say.courseDay}</th>
              <th scope="col" className="course-count">{say.courseDays}</th>
              <th scope="col" className="course-count">{sheet.countLabel[batch.unit]}</th>
            </tr>
          </thead>
          <tbody>
            {batch.course.map((count, index) => (
              <tr key={`${count.on}-${index}`}>
                <th scope="row">{dates.short(count.on)}</th>
                <td className="course-count">{daysBetween(batch.startedOn, count.on)}</td>
                <td className="course-count">{numbers.count(count.emergedUnits)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Section>
  );
}
