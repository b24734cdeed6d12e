/** TriedEdit: what an edit that is still being typed would do, to the line itself and to everybody else, before it is sent. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { promises as contracts, readInput } from '@rootclock/contracts';
import { readFailure, sentenceOf, trpc } from '../../../../lib/api/index.ts';
import { useRested } from '../../../../lib/use-rested.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ChangedLine } from './changed-line.tsx';
import { isTouched, summaryOf } from './summary.ts';
import '../what-if.css';

type Edit = NonNullable<Parameters<typeof trpc.promises.whatIf.queryOptions>[0]>;
type Tried = Exclude<Edit, symbol>;

/** What is still unfinished is not asked about; its own form says what is missing. */
export function TriedEdit({ edit }: { edit: Tried | null }) {
  const read = readInput(contracts.whatIf, edit);
  const asked = useRested(read.ok ? JSON.stringify(read.data) : '');
  const tried = asked === '' ? null : (JSON.parse(asked) as Tried);
  const query = useQuery({ ...trpc.promises.whatIf.queryOptions(tried ?? NEVER), enabled: tried !== null, placeholderData: keepPreviousData });
  const refused = tried && query.isError ? readFailure(query.error) : null;
  return (
    <div aria-live="polite" aria-busy={query.isFetching}>
      {refused?.class === 'refusal' && <p>{sentenceOf(refused)}</p>}
      {tried && !refused && query.data && <Outcome answer={query.data} tried={tried} />}
    </div>
  );
}

/** Stands in for an edit while there is none; it is never sent. */
const NEVER: Tried = { kind: 'withdraw-line', lineId: '' };

function Outcome({ answer, tried }: { answer: contracts.WhatIf; tried: Tried }) {
  const { gardens } = useMessages();
  const words = gardens.whatIf;
  const isOwn = ({ lineId, orderId }: contracts.WhatIfLine) => ('lineId' in tried ? lineId === tried.lineId : 'orderId' in tried && orderId === tried.orderId);
  // A line that is new is told of while it is typed, and of one that goes the form itself says that its plants become free.
  const own = answer.lines.filter((line) => isOwn(line) && line.standing === 'stays' && (isTouched(line) || line.shortThen > 0));
  const others = answer.lines.filter((line) => !isOwn(line) && isTouched(line));
  return (
    <div className="stack">
      <h3>{words.differenceTitle}</h3>
      {answer.keepsRank === false && <p>{'lineId' in tried ? words.lineGoesLast : gardens.day.goesLast}</p>}
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
