/** Tests of a source's seed over time, drawn and in a table, and what they say. */
import { FIELD, GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Badge, toast } from '../../../../ui/feedback/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../../ui/table/index.ts';
import type { SourceStory } from '../source-story.ts';
import { Quality } from './quality.tsx';
import { TestSheet } from './test-sheet.tsx';
import { TestsChart } from './tests-chart.tsx';

type Seed = NonNullable<SourceStory['seed']>;
type Test = Seed['tests'][number];

export function TestsSection({ source, seed }: { source: SourceStory; seed: Seed }) {
  const { seed: say } = useMessages();
  const { mayBe } = useSession();
  const [recording, setRecording] = useState(false);
  const columns = useColumns();
  const hasTolerance = seed.tests.some(({ tolerancePercent }) => tolerancePercent !== null);
  return (
    <Section
      title={say.tests}
      actions={mayBe(FIELD) && <Button onClick={() => setRecording(true)}>{say.recordTest}</Button>}
    >
      <div className="stack">
        <Quality seed={seed} />
        <TestsChart tests={seed.tests} gatheredOn={source.gatheredOn} />
        <DataTable
          caption={say.tests}
          quietCaption
          rows={seed.tests}
          rowId={(test) => test.testId}
          rowName={(test) => test.testedOn}
          columns={columns}
          empty={
            <p>
              <strong>{say.noTests}</strong> {say.noTestsText}
            </p>
          }
        />
        {hasTolerance && <p className="quality-words">{say.toleranceSource}</p>}
      </div>
      {recording && <TestSheet source={source} onClose={() => setRecording(false)} />}
    </Section>
  );
}

function useColumns(): Column<Test>[] {
  const { seed: say } = useMessages();
  const { dates, numbers } = useFormat();
  const { mayBe } = useSession();
  const { send } = useCommand('sources.withdrawViabilityTest', { title: say.withdraw });
  const withdraw = (testId: string) => void send({ testId }).then(() => toast({ text: say.withdrawnNow }), tellRefused);
  const range = ({ rangePercent, tolerancePercent }: Test) =>
    tolerancePercent === null
      ? say.rangeAlone(numbers.count(rangePercent))
      : say.rangeOf(numbers.count(rangePercent), tolerancePercent);
  return [
    { key: 'testedOn', header: say.testedOn, title: true, cell: (test) => dates.long(test.testedOn) },
    { key: 'mean', header: say.mean, figure: true, cell: (test) => numbers.share(test.meanShare) },
    {
      key: 'counts',
      header: say.counts,
      cell: (test) => say.countsOf(test.replicates.join(', '), test.seedsPerReplicate),
    },
    { key: 'range', header: say.range, cell: (test) => (test.replicates.length === 1 ? '' : range(test)) },
    {
      key: 'hard',
      header: say.hardDormant,
      cell: (test) =>
        test.hardShare + test.dormantShare > 0
          ? `${numbers.share(test.hardShare)}, ${numbers.share(test.dormantShare)}`
          : '',
    },
    { key: 'method', header: say.method, cell: (test) => say.methods[test.method] },
    {
      key: 'state',
      header: say.state,
      cell: (test) =>
        test.withdrawn ? (
          <Badge shape="open">{say.withdrawn}</Badge>
        ) : test.toRepeat ? (
          <Badge shape="over">{say.toRepeat}</Badge>
        ) : test.tolerancePercent === null ? (
          <Badge shape="open">{say.untold}</Badge>
        ) : (
          <Badge shape="full">{say.agrees}</Badge>
        ),
    },
    ...(mayBe(GROWERS)
      ? [
          {
            key: 'withdraw',
            header: say.withdraw,
            cell: (test: Test) =>
              !test.withdrawn && (
                <Button
                  look="quiet"
                  aria-label={`${say.withdraw}: ${dates.long(test.testedOn)}`}
                  onClick={() => withdraw(test.testId)}
                >
                  {say.withdraw}
                </Button>
              ),
          },
        ]
      : []),
  ];
}
