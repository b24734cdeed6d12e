/** TriedEdit: what an edit that is still being typed would do, to the line itself and to everybody else, before it is sent. */
import type { promises as contracts } from '@rootclock/contracts';
import { sentenceOf } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ChangedLine } from './changed-line.tsx';
import { isTouched, summaryOf } from './summary.ts';
import { useTried, type Edit, type Tried } from './use-tried.ts';
import '../what-if.css';

export function TriedEdit({ edit }: { edit: Edit | null }) {
  return <TriedOutcome tried={useTried(edit)} />;
}

/** The same where the form itself looks at the answer too. */
export function TriedOutcome({ tried: { edit, answer, refused, isAsking } }: { tried: Tried }) {
  return (
    <div aria-live="polite" aria-busy={isAsking}>
      {refused?.class === 'refusal' && <p>{sentenceOf(refused)}</p>}
      {edit && answer && <Outcome answer={answer} edit={edit} />}
    </div>
  );
}

function Outcome({ answer, edit }: { answer: contracts.WhatIf; edit: Edit }) {
  const { promises } = useMessages();
  const words = promises.whatIf;
  const isOwn = ({ lineId, orderId }: contracts.WhatIfLine) =>
    'lineId' in edit ? lineId === edit.lineId : 'orderId' in edit && orderId === edit.orderId;
  // A line that is new is told of while it is typed, and of one that goes the form itself says that its plants become free.
  const own = answer.lines.filter(
    (line) => isOwn(line) && line.standing === 'stays' && (isTouched(line) || line.shortThen > 0),
  );
  const others = answer.lines.filter((line) => !isOwn(line) && isTouched(line));
  return (
    <div className="stack">
      <h3>{words.differenceTitle}</h3>
      {edit.kind === 'edit-line' && answer.keepsRank === false && <p>{words.lineGoesLast}</p>}
      {edit.kind === 'move-order' && <p>{answer.keepsRank ? promises.day.keeps : promises.day.goesLast}</p>}
      <p>{others.length === 0 ? words.nobodyElse : summaryOf(words, others)}</p>
      {own.length + others.length > 0 && (
        <ul className="what-if-lines">
          {[...own, ...others].map((line) => (
            <li key={line.lineId}>
              <ChangedLine line={line} inForm />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
