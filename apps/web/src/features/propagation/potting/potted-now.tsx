/** PottedNow: the lots of this potting session, each leading to its page. */
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import '../batch/batch.css';

export interface PottedLot {
  entryId: string;
  lotId: string;
  code: string;
  plants: number;
}

export function PottedNow({ lots }: { lots: readonly PottedLot[] }) {
  const { propagation } = useMessages();
  return (
    <div>
      <p>{propagation.sheet.pottedNow}</p>
      <ul className="batch-lines">
        {lots.map((lot) => (
          <li key={lot.entryId}>
            <TextLink to={paths.lot(lot.lotId)}>{lot.code}</TextLink>, {propagation.plants(lot.plants)}
          </li>
        ))}
      </ul>
    </div>
  );
}
