/** Difference: what a change would do, first in a sentence and two figures, then line by line with the plants by code. */
import type { promises } from '@rootclock/contracts';
import { useMessages } from '../../../../messages/index.ts';
import { EmptyState } from '../../../../ui/feedback/index.ts';
import { DefinitionList, Panel } from '../../../../ui/layout/index.ts';
import { PlanMark } from '../../../pot-life/plan-mark.tsx';
import { ChangedLine } from './changed-line.tsx';
import { isTouched, summaryOf } from './summary.ts';

const isOwn = ({ standing }: promises.WhatIfLine) => standing !== 'stays';

export function Difference({ answer }: { answer: promises.WhatIf }) {
  const { promises } = useMessages();
  const words = promises.whatIf;
  const { lines, totals, unchangedLines, keepsRank } = answer;
  if (lines.length === 0) {
    return unchangedLines === 0 ? (
      <EmptyState kind="nothing-matches" title={words.nobodyAsks}>
        {words.nobodyAsksText}
      </EmptyState>
    ) : (
      <EmptyState kind="all-done" title={words.nobodyMinds}>
        {words.nobodyMindsText(unchangedLines)}
      </EmptyState>
    );
  }
  const others = lines.filter((line) => !isOwn(line) && isTouched(line));
  const summary = summaryOf(words, others);
  return (
    <div className="stack">
      <PlanMark about="answer" />
      <Panel>
        <div className="stack">
          {summary && <p>{summary}</p>}
          {keepsRank !== null && <p>{keepsRank ? promises.day.keeps : promises.day.goesLast}</p>}
          <DefinitionList
            facts={[
              { term: words.shortTerm, value: words.nowThen(totals.shortNow, totals.shortThen) },
              { term: words.decliningTerm, value: words.nowThen(totals.decliningNow, totals.decliningThen) },
            ]}
          />
        </div>
      </Panel>
      <ul className="what-if-lines">
        {lines.map((line) => (
          <li key={line.lineId}>
            <ChangedLine line={line} />
          </li>
        ))}
      </ul>
      {unchangedLines > 0 && <p>{words.unchanged(unchangedLines)}</p>}
    </div>
  );
}
