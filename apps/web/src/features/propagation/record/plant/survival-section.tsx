/** Life in the pot: the curve of each container with its band and the pot-life limit, and the same figures in a table. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { DataTable } from '../../../../ui/table/index.ts';
import type { PotSurvival } from '../record-data.ts';
import { SurvivalChart } from './survival-chart.tsx';
import { bandOf, survivalAt, thinned } from './survival-shape.ts';

export function SurvivalSection({ survivals }: { survivals: readonly PotSurvival[] }) {
  const { record: say } = useMessages();
  return (
    <Section title={say.survival}>
      {survivals.length === 0 ? (
        <p>{say.noSurvival}</p>
      ) : (
        <div className="record-stages">
          <p className="record-note">{say.survivalLead}</p>
          {survivals.map((curve) => (
            <Curve key={curve.containerId} curve={curve} />
          ))}
        </div>
      )}
    </Section>
  );
}

function Curve({ curve }: { curve: PotSurvival }) {
  const { record: say, lots } = useMessages();
  const { numbers } = useFormat();
  const { containerName, plants, died, lastDays, steps, medianDays } = curve;
  const [limit] = curve.limits;
  const band = bandOf(steps);
  return (
    <div className="record-part">
      <h3>{say.survivalIn(containerName)}</h3>
      <p>
        {say.survivalRests(numbers.count(plants), numbers.count(died), lastDays)}{' '}
        {steps.length === 0 ? say.noDeaths : medianDays === null ? say.noMedian : say.medianDays(medianDays)}{' '}
        {limit && (lastDays >= limit.days ? say.limitAt(numbers.share(survivalAt(band, limit.days))) : say.limitBeyond)}
      </p>
      {/* A curve without deaths is a line at the top: the sentence says as much. */}
      {steps.length > 0 && <SurvivalChart curve={curve} />}
      {curve.limits.map(({ basis, span, days }) => (
        <p key={basis} className="record-note">
          {say.limit(lots.words.span(span), basis, days)}
        </p>
      ))}
      {steps.length > 0 && <StepsTable curve={curve} />}
    </div>
  );
}

function StepsTable({ curve }: { curve: PotSurvival }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const bands = new Map(bandOf(curve.steps).map((step) => [step.days, step]));
  const rangeOf = (days: number) => {
    const band = bands.get(days);
    return band && say.range(numbers.share(band.low), numbers.share(band.high));
  };
  return (
    <details className="record-fold">
      <summary>{say.allSteps(curve.steps.length)}</summary>
      <DataTable
        caption={say.survivalIn(curve.containerName)}
        quietCaption
        rows={thinned(curve.steps)}
        rowId={(row) => String(row.days)}
        rowName={(row) => String(row.days)}
        empty={null}
        columns={[
          { key: 'day', header: say.day, title: true, cell: (row) => say.days(row.days) },
          { key: 'atRisk', header: say.atRisk, figure: true, cell: (row) => numbers.count(row.atRisk) },
          { key: 'died', header: say.died, figure: true, cell: (row) => numbers.count(row.died) },
          { key: 'alive', header: say.alive, figure: true, cell: (row) => numbers.share(row.survival) },
          { key: 'band', header: say.band, cell: ({ days }) => rangeOf(days) },
        ]}
      />
    </details>
  );
}
