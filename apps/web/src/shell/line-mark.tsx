/** LineMark: whether what was entered has reached the server; it leads to the outbox. Loud only when there is cause, and then it does not scroll away. */
import { Link } from '@tanstack/react-router';
import { useOnline, useOutbox } from '../lib/outbox/index.ts';
import { paths } from '../lib/paths.ts';
import { useMessages } from '../messages/index.ts';

export function LineMark({ personId }: { personId: string }) {
  const { outbox } = useMessages();
  const online = useOnline();
  const { waiting, parked, stalled, isKnown, sendingIds } = useOutbox(personId);
  const trouble = parked.length > 0 || !online || stalled;
  const words = [
    isKnown ? '' : outbox.looking,
    parked.length > 0 ? outbox.attention(parked.length) : '',
    !online ? outbox.offline : '',
    waiting.length > 0 ? (sendingIds.length > 0 && !stalled ? outbox.sending : outbox.waiting(waiting.length)) : '',
  ].filter(Boolean);
  return (
    <Link to={paths.outbox()} className="line-mark" data-trouble={trouble || undefined}>
      <svg viewBox="0 0 12 12" aria-hidden="true" className="badge-shape">
        {trouble ? (
          <path d="M6 0.5l5.5 10.5H0.5z" fill="currentColor" />
        ) : waiting.length > 0 ? (
          <path d="M2 6h8M7 3l3 3-3 3" fill="none" stroke="currentColor" strokeWidth="1.8" />
        ) : (
          <path d="M1.5 6.5l3 3 6-7" fill="none" stroke="currentColor" strokeWidth="1.8" />
        )}
      </svg>
      {/* Heard when it changes, so that nobody has to look whether the line came back. */}
      <span role="status">{words.length > 0 ? words.join(' · ') : outbox.allSent}</span>
    </Link>
  );
}
