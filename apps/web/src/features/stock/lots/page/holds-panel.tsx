/** What holds a lot back now, and what once did. */
import { GROWERS, type HoldReason } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import type { Lot } from '../lot-data.ts';
import { ReleaseSheet } from '../sheets/release-sheet.tsx';

export function OpenHolds({ lot }: { lot: Lot }) {
  const { actions, page, words } = useMessages().lots;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const [releasing, setReleasing] = useState<HoldReason | null>(null);
  const open = lot.holds.filter((hold) => hold.releasedOn === null);
  return (
    <>
      {open.map((hold) => (
        <Callout
          key={hold.id}
          tone="caution"
          title={page.heldNow}
          actions={mayBe(GROWERS) && <Button onClick={() => setReleasing(hold.reason)}>{actions.release}</Button>}
        >
          {page.heldSince(words.holds[hold.reason], dates.short(hold.heldOn))}
        </Callout>
      ))}
      {releasing && <ReleaseSheet lot={lot} reason={releasing} onClose={() => setReleasing(null)} />}
    </>
  );
}

export function PastHolds({ lot }: { lot: Lot }) {
  const { page, words } = useMessages().lots;
  const { dates } = useFormat();
  const past = lot.holds.filter((hold) => hold.releasedOn !== null);
  if (past.length === 0) return null;
  return (
    <details className="lot-fold">
      <summary>{page.heldPast}</summary>
      <ul className="lot-list">
        {past.map((hold) => (
          <li key={hold.id}>
            {page.heldFromTo(
              words.holds[hold.reason],
              dates.short(hold.heldOn),
              dates.short(hold.releasedOn ?? hold.heldOn),
            )}
            : {hold.releaseReason || page.takenBack}
          </li>
        ))}
      </ul>
    </details>
  );
}
