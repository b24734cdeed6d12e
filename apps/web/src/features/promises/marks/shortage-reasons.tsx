/** Why units do not serve, each reason with its number. */
import type { promises } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';

export function ShortageReasons({ reasons }: { reasons: readonly promises.ShortageReason[] }) {
  const { promises } = useMessages();
  return (
    <ul className="plain-list">
      {reasons.map((reason) => (
        <li key={reason.reason}>{promises.line.reasons[reason.reason](reason)}</li>
      ))}
    </ul>
  );
}
