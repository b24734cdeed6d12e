/** The second step of a change that leaves lines shorter: their names and numbers, and the way to do it all the same. */
import type { LineShortening } from '@rootclock/contracts';
import type { Failure } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';

export interface WouldShortenProps {
  failure: Failure | null;
  onAccept: (accepted: { lineId: string; units: number }[]) => void;
  busy: boolean;
}

export function WouldShorten({ failure, onAccept, busy }: WouldShortenProps) {
  const { promises } = useMessages();
  const words = promises.line;
  if (failure?.code !== 'would-shorten') return null;
  const lines = failure.data?.['lines'] as LineShortening[];
  return (
    <Callout
      tone="caution"
      title={words.wouldShorten}
      announce
      actions={
        <Button
          look="danger"
          busy={busy}
          onClick={() => onAccept(lines.map(({ lineId, shorterBy }) => ({ lineId, units: shorterBy })))}
        >
          {words.accept}
        </Button>
      }
    >
      <ul className="plain-list">
        {lines.map((line) => (
          <li key={line.lineId}>
            {words.shorter(
              line.orderCode,
              line.clientName,
              line.scientificName,
              line.containerCode,
              line.filledNow,
              line.filledThen,
              line.shorterBy,
            )}
          </li>
        ))}
      </ul>
    </Callout>
  );
}
