/** What is to be fetched at one place. */
import type { gardens as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { AskRootBall } from './ask-root-ball.tsx';
import { PullRow } from './pull-row.tsx';
import { usePull, type Pulling } from './use-pull.ts';

export interface PullPlaceProps {
  pulling: Pulling;
  rows: readonly contracts.PullRow[];
  mayPull: boolean;
}

export function PullPlace({ pulling, rows, mayPull }: PullPlaceProps) {
  const { gardens, ui } = useMessages();
  const words = gardens.pull;
  const { dates } = useFormat();
  const all = usePull(pulling);
  const [first] = rows;
  if (!first) return null;
  const total = rows.reduce((sum, { units }) => sum + units, 0);
  const isClosed = first.closedUntilAt !== null;
  return (
    <Section
      title={first.placeName === first.placeCode ? first.placeCode : `${first.placeCode} · ${first.placeName}`}
      aside={words.atPlace(total)}
      actions={
        mayPull &&
        !isClosed &&
        rows.length > 1 && (
          <span className="not-on-paper">
            <Button busy={all.busy} onClick={() => all.pull(rows.map((row) => ({ row, units: row.units })))}>
              {words.pullAll(first.placeCode, total)}
            </Button>
          </span>
        )
      }
    >
      {first.closedUntilAt && (
        <Callout tone="caution">{words.closed(dates.instant(first.closedUntilAt), first.closedReason)}</Callout>
      )}
      <AskRootBall pull={all} />
      {all.refusal && (
        <Callout tone="refusal" announce>
          {all.refusal}
        </Callout>
      )}
      {all.isKept && <p role="status">{ui.kept}</p>}
      <ul className="pull-rows">
        {rows.map((row) => (
          // Keyed with its units too: what is left after a part was pulled is offered anew.
          <PullRow
            key={`${row.lineId}/${row.lotId}/${row.units}`}
            pulling={pulling}
            row={row}
            mayPull={mayPull && !isClosed}
          />
        ))}
      </ul>
    </Section>
  );
}
