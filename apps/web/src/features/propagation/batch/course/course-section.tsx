/** What has come up or rooted: the chart for those who look, the figures and tables for those who read. */
import { daysBetween, isUnitOnePlant } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { DefinitionList, Section } from '../../../../ui/layout/index.ts';
import type { BatchPageData } from '../../batch-page-data.ts';
import { CourseChart, LineSample } from './course-chart.tsx';
import { type Course, courseOf } from './course-scale.ts';

/** With its beginning, one count makes a line; two make one worth looking at. */
const FEWEST_FOR_A_LINE = 2;

export function CourseSection({ batch }: { batch: BatchPageData }) {
  const { course: say } = useMessages().propagation;
  const { today } = useSession();
  const sown = isUnitOnePlant(batch.unit) ? batch.startedUnits : batch.seedsSown;
  const course = courseOf(
    { code: batch.code, startedOn: batch.startedOn, sown, counts: batch.course },
    batch.earlier,
    today,
  );
  return (
    <Section title={say.title}>
      {batch.course.length === 0 && <p>{say.empty}</p>}
      {batch.course.length >= FEWEST_FOR_A_LINE && <CourseChart course={course} />}
      {batch.figures !== null && <Figures figures={batch.figures} unit={batch.unit} />}
      {batch.course.length > 0 && !course.inShares && <p>{say.noShare}</p>}
      <div className="course-tables">
        {batch.course.length > 0 && <OwnCounts batch={batch} course={course} />}
        {batch.course.length > 0 && course.earlier.length > 0 && <EarlierBatches batch={batch} />}
      </div>
    </Section>
  );
}

function Figures({ figures, unit }: { figures: NonNullable<BatchPageData['figures']>; unit: BatchPageData['unit'] }) {
  const { course: say } = useMessages().propagation;
  const { numbers } = useFormat();
  const days = (value: number) => say.daysOf(numbers.decimal(value));
  return (
    <>
      <DefinitionList
        facts={[
          {
            term: say.percentage,
            value: say.percentageOf(numbers.share(figures.percentage / 100), numbers.count(figures.sown), unit),
          },
          figures.meanTimeDays !== null && { term: say.meanTime, value: days(figures.meanTimeDays) },
          figures.t50Coolbear !== null &&
            figures.t50Farooq !== null && {
              term: say.half,
              value: say.halves(days(figures.t50Coolbear), days(figures.t50Farooq)),
            },
          figures.speed > 0 && { term: say.speed, value: say.speedOf(numbers.decimal(figures.speed)) },
        ]}
      />
      <p className="course-note">{say.restsOn(figures.counts)}</p>
    </>
  );
}

function OwnCounts({ batch, course }: { batch: BatchPageData; course: Course }) {
  const { course: say, sheet } = useMessages().propagation;
  const { dates, numbers } = useFormat();
  const sown = isUnitOnePlant(batch.unit) ? batch.startedUnits : batch.seedsSown;
  return (
    <table className="course-table">
      <caption>{say.thisBatch}</caption>
      <thead>
        <tr>
          <th scope="col">{say.day}</th>
          <th scope="col" className="course-count">
            {say.days}
          </th>
          <th scope="col" className="course-count">
            {sheet.countLabel[batch.unit]}
          </th>
          {course.inShares && (
            <th scope="col" className="course-count">
              {say.share}
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {batch.course.map((count, index) => (
          <tr key={`${count.on}-${index}`}>
            <th scope="row">{dates.short(count.on)}</th>
            <td className="course-count">{daysBetween(batch.startedOn, count.on)}</td>
            <td className="course-count">{numbers.count(count.emergedUnits)}</td>
            {course.inShares && sown !== null && (
              <td className="course-count">{numbers.share(count.emergedUnits / sown)}</td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function EarlierBatches({ batch }: { batch: BatchPageData }) {
  const { course: say } = useMessages().propagation;
  const { numbers } = useFormat();
  return (
    <table className="course-table">
      <caption>{say.earlier}</caption>
      <thead>
        <tr>
          <th scope="col">{say.batch}</th>
          <th scope="col">{say.sown}</th>
          <th scope="col">{say.last}</th>
        </tr>
      </thead>
      <tbody>
        {batch.earlier.map(({ batchId, code, sown, unit, startedOn, counts }, index) => {
          const last = counts.at(-1);
          return (
            <tr key={batchId}>
              <th scope="row">
                <LineSample index={index} /> <TextLink to={paths.batch(batchId)}>{code}</TextLink>
              </th>
              <td>{say.sownOf(numbers.count(sown), unit)}</td>
              <td>{last && say.lastOf(numbers.share(last.emergedUnits / sown), daysBetween(startedOn, last.on))}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
