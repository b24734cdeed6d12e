/** KeptNotice: says how old the page is while the server gives no answer. Heard once, when it comes. */
import { useFormat } from '../lib/format/index.ts';
import { useShownSince } from '../lib/kept-reads/use-shown-since.ts';
import { useMessages } from '../messages/index.ts';
import { Callout } from '../ui/feedback/index.ts';

export function KeptNotice() {
  const { shell } = useMessages();
  const { dates } = useFormat();
  const since = useShownSince();
  return (
    <div role="status" className="page-notice">
      {since !== null && <Callout tone="note">{shell.keptSince(dates.instant(new Date(since).toISOString()))}</Callout>}
    </div>
  );
}
