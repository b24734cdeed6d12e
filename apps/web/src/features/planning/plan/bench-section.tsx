/** BenchSection: the bench space by week, what stands and what is planned, against what there is. The same figures stand in the table under it. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../ui/table/index.ts';
import { benchShape, type BenchShape } from './bench-shape.ts';
import { MonthScale } from '../month-scale.tsx';
import type { Plan } from './plan-words.ts';
import '../charts.css';

const HEIGHT = 120;
const STEP = 8;
const CM2_IN_M2 = 10_000;

export function BenchSection({ plan }: { plan: Plan }) {
  const { plan: say } = useMessages().planning;
  const { dates, measures } = useFormat();
  const shape = benchShape(plan);
  const area = (cm2: number) => measures.area(cm2 / CM2_IN_M2);
  if (!shape && plan.capacityCm2 === null && plan.lines.length === 0) return null;
  const peak = shape ? area(shape.peak.standingCm2 + shape.peak.plannedCm2) : '';
  const note =
    shape &&
    (plan.capacityCm2 === null
      ? say.benchPeak(peak, dates.short(shape.peak.startsOn))
      : say.benchNote(peak, dates.short(shape.peak.startsOn), area(plan.capacityCm2)));
  return (
    <Section title={say.benchTitle}>
      {plan.capacityCm2 === null && (
        <Callout tone="note" actions={<ButtonLink to={paths.places()}>{say.measurePlaces}</ButtonLink>}>
          {say.benchUnknown}
        </Callout>
      )}
      {shape && note && (
        <>
          <p>{note}</p>
          <BenchChart shape={shape} label={note} top={say.chartTop(area(shape.topCm2))} />
          <Legend hasCapacity={shape.capacity !== null} />
          <BenchTable shape={shape} capacityCm2={plan.capacityCm2} area={area} />
        </>
      )}
    </Section>
  );
}

function BenchChart({ shape, label, top }: { shape: BenchShape; label: string; top: string }) {
  const width = shape.bars.length * STEP;
  const y = (share: number) => HEIGHT - share * (HEIGHT - 4);
  return (
    <div>
      <p className="weeks-top">{top}</p>
      <svg
        className="weeks-chart"
        viewBox={`0 0 ${width} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={label}
      >
        {shape.bars.map(({ startsOn, standing, together }, at) => (
          <g key={startsOn}>
            <rect
              className="weeks-solid"
              x={at * STEP}
              width={STEP - 1}
              y={y(standing)}
              height={HEIGHT - y(standing)}
            />
            {together > standing && (
              <rect
                className="weeks-outlined"
                x={at * STEP}
                width={STEP - 1}
                y={y(together)}
                height={y(standing) - y(together)}
              />
            )}
          </g>
        ))}
        {shape.capacity !== null && (
          <line className="weeks-dashed" x1={0} x2={width} y1={y(shape.capacity)} y2={y(shape.capacity)} />
        )}
        <line className="weeks-base" x1={0} x2={width} y1={HEIGHT} y2={HEIGHT} />
      </svg>
      <MonthScale weeks={shape.weeks} />
    </div>
  );
}

function Legend({ hasCapacity }: { hasCapacity: boolean }) {
  const { benchLegend: say } = useMessages().planning.plan;
  return (
    <ul className="weeks-legend">
      <li>
        <span className="weeks-key weeks-solid" aria-hidden="true" />
        {say.standing}
      </li>
      <li>
        <span className="weeks-key weeks-outlined" aria-hidden="true" />
        {say.planned}
      </li>
      {hasCapacity && (
        <li>
          <span className="weeks-key weeks-dashed" aria-hidden="true" />
          {say.capacity}
        </li>
      )}
    </ul>
  );
}

function BenchTable({
  shape,
  capacityCm2,
  area,
}: {
  shape: BenchShape;
  capacityCm2: number | null;
  area: (cm2: number) => string;
}) {
  const { plan: say } = useMessages().planning;
  const { dates } = useFormat();
  type Week = BenchShape['weeks'][number];
  const columns: Column<Week>[] = [
    { key: 'week', header: say.week, title: true, cell: ({ startsOn }) => dates.short(startsOn) },
    { key: 'standing', header: say.standing, figure: true, cell: ({ standingCm2 }) => area(standingCm2) },
    { key: 'planned', header: say.planned, figure: true, cell: ({ plannedCm2 }) => area(plannedCm2) },
    {
      key: 'together',
      header: say.together,
      figure: true,
      cell: ({ standingCm2, plannedCm2 }) => area(standingCm2 + plannedCm2),
    },
    ...(capacityCm2 === null
      ? []
      : [
          {
            key: 'free',
            header: say.free,
            figure: true,
            cell: ({ standingCm2, plannedCm2 }: Week) => area(Math.max(0, capacityCm2 - standingCm2 - plannedCm2)),
          },
        ]),
  ];
  return (
    <details className="weeks-fold">
      <summary>{say.benchTable}</summary>
      <DataTable
        caption={say.benchTable}
        quietCaption
        rows={shape.weeks}
        rowId={({ startsOn }) => startsOn}
        rowName={({ startsOn }) => dates.short(startsOn)}
        columns={columns}
        empty={null}
      />
    </details>
  );
}
