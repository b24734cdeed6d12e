/** SharesTable: what is believed to pass each stage ahead, and what that rests on. */
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import type { ForecastSuggestion } from './suggestion.ts';
import '../batch/course/course.css';

/** A stage that everything passes tells nothing, unless somebody counted. */
const tells = ({ priorShare, tried }: { priorShare: number; tried: number }) => tried > 0 || priorShare < 1;

export function SharesTable({ stages }: Pick<ForecastSuggestion, 'stages'>) {
  const { propagation } = useMessages();
  const { yields: say } = propagation;
  const { numbers } = useFormat();
  const rows = stages.filter(tells);
  if (rows.length === 0) return null;
  return (
    <table className="course-table">
      <thead>
        <tr>
          <th scope="col">{say.stage}</th>
          <th scope="col" className="course-count">
            {say.passes}
          </th>
          <th scope="col">{say.restsOn}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.stage}>
            <th scope="row">{propagation.stages.names[row.stage]}</th>
            <td className="course-count">{numbers.share(row.share)}</td>
            <td>
              {row.tried === 0
                ? say.figureOnly
                : `${say.counts(numbers.count(row.passed), numbers.count(row.tried), row.batches)}; ${say.withFigure(numbers.share(row.priorShare))}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
