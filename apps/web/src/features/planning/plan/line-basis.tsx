/** What a line of the plan was reckoned from: the days of its stages, and the share that passes each with the counts behind it. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import type { PlanRow } from './plan-words.ts';

export function LineBasis({ row }: { row: PlanRow }) {
  const { planning, propagation } = useMessages();
  const { plan: say } = planning;
  const { dates, numbers } = useFormat();
  const { names } = propagation.stages;
  const learned = row.restsOn.filter(({ share, tried }) => share < 1 || tried > 0);
  return (
    <details className="plan-basis">
      <summary>{say.restsOn}</summary>
      <div className="plan-basis-parts">
        <ol>
          {row.stages.map(({ kind, beginsOn }) => (
            <li key={kind}>{say.begins(names[kind], dates.long(beginsOn))}</li>
          ))}
          <li>{say.readyOn(dates.long(row.readyOn))}</li>
        </ol>
        <div>
          <p>{say.passes(numbers.part(row.share))}</p>
          <ul>
            {learned.map(({ stage, covers, share, tried, batches }) => (
              <li key={stage}>
                {say.passesStage(covers.map((kind) => names[kind]).join(', '), numbers.part(share), tried, batches)}
              </li>
            ))}
          </ul>
          <p>
            <TextLink to={paths.protocol(row.protocolId)}>{say.protocol}</TextLink>
          </p>
        </div>
      </div>
    </details>
  );
}
