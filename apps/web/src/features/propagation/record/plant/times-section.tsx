/** How long batches took: lines from the tenth to the ninetieth percentile with the median marked, and the same figures in a table. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { DataTable } from '../../../../ui/table/index.ts';
import type { PlantRecord } from '../record-data.ts';

type Taken = PlantRecord['times'][number]['toReady'];
interface Row extends Taken {
  name: string;
}

const WIDTH = 400;
const LEFT = 8;
const RIGHT = 392;
const ROW = 40;
const TOP = 8;

export function TimesSection({ times }: { times: PlantRecord['times'] }) {
  const { record: say, propagation } = useMessages();
  const rows: Row[] = times.flatMap(({ method, toPotting, toReady }) => [
    { name: say.timeOf(propagation.methods[method], say.toPotting), ...toPotting },
    { name: say.timeOf(propagation.methods[method], say.toReady), ...toReady },
  ]);
  return (
    <Section title={say.times}>
      {rows.length === 0 ? (
        <p>{say.noTimes}</p>
      ) : (
        <>
          <p className="record-note">{say.timesLead}</p>
          <TimesChart rows={rows.filter(({ lowDays }) => lowDays !== null)} />
          <TimesTable rows={rows} />
        </>
      )}
    </Section>
  );
}

function TimesChart({ rows }: { rows: readonly Row[] }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const most = Math.max(
    1,
    ...rows.flatMap(({ lowDays, medianDays, highDays }) => [lowDays ?? 0, medianDays ?? 0, highDays ?? 0]),
  );
  const base = TOP + rows.length * ROW;
  if (rows.length === 0) return null;
  const xOf = (days: number) => LEFT + (days / most) * (RIGHT - LEFT);
  return (
    <svg
      className="record-chart"
      viewBox={`0 0 ${WIDTH} ${base + 36}`}
      role="img"
      aria-label={say.timesChart(rows.length)}
    >
      {[0, 0.5, 1].map((mark) => (
        <g key={mark}>
          <path className="record-rule" d={`M${xOf(mark * most)} ${TOP}V${base}`} />
          <text x={xOf(mark * most)} y={base + 15} textAnchor={mark === 0 ? 'start' : mark === 1 ? 'end' : 'middle'}>
            {numbers.count(Math.round(mark * most))}
          </text>
        </g>
      ))}
      {rows.map(({ name, lowDays, medianDays, highDays }, index) => {
        const y = TOP + index * ROW + 28;
        // Where nine tenths are not reached yet nobody knows where the line ends: it is left open.
        const end = highDays ?? most;
        return (
          <g key={name}>
            <text x={LEFT} y={y - 11}>
              {name}
            </text>
            <path
              className="record-span"
              strokeDasharray={highDays === null ? '6 4' : undefined}
              d={`M${xOf(lowDays ?? 0)} ${y}H${xOf(end)}M${xOf(lowDays ?? 0)} ${y - 5}v10${highDays === null ? '' : `M${xOf(end)} ${y - 5}v10`}`}
            />
            {medianDays !== null && <circle className="record-mark" cx={xOf(medianDays)} cy={y} r="5" />}
          </g>
        );
      })}
      <text x={(LEFT + RIGHT) / 2} y={base + 32} textAnchor="middle">
        {say.daysFromStart}
      </text>
    </svg>
  );
}

function TimesTable({ rows }: { rows: readonly Row[] }) {
  const { record: say } = useMessages();
  const inDays = (days: number | null) => (days === null ? say.notYet : say.days(days));
  return (
    <DataTable
      caption={say.times}
      quietCaption
      rows={rows}
      rowId={(row) => row.name}
      rowName={(row) => row.name}
      empty={null}
      columns={[
        { key: 'what', header: say.what, title: true, cell: (row) => row.name },
        { key: 'tenth', header: say.tenth, cell: (row) => inDays(row.lowDays) },
        { key: 'median', header: say.median, cell: (row) => inDays(row.medianDays) },
        { key: 'ninetieth', header: say.ninetieth, cell: (row) => inDays(row.highDays) },
        { key: 'restsOn', header: say.restsOn, cell: (row) => say.rests(row.batches, row.unfinished) },
      ]}
    />
  );
}
