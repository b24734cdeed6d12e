/** LineNatives: where an order takes only natives, what one of its lines accepts that is none, by the scientific name. */
import type { promises as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { Taxon } from '../../plants/taxon.tsx';

export function LineNatives({
  line: { notNatives },
  region,
}: {
  line: Pick<contracts.OrderLineRow, 'notNatives'>;
  region: string | null;
}) {
  const { natives: say } = useMessages().promises.line;
  if (notNatives.length === 0) return null;
  return (
    <Callout tone="caution" title={say.title}>
      <p>
        {notNatives.map(({ plantId, scientificName }, index) => (
          <span key={plantId}>
            {index > 0 && ', '}
            <Taxon name={scientificName} />
          </span>
        ))}
      </p>
      <p>{region === null ? say.noRegion : say.breaks(region)}</p>
    </Callout>
  );
}
