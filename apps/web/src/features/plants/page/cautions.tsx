/** What can hurt people, animals or the plant itself. Local codes and licensed practice go before anything said here. */
import type { plants as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { CAUTION_FACTS } from '../facts/fact-order.ts';

export function Cautions({ plant }: { plant: contracts.PlantPage }) {
  const { plants } = useMessages();
  const known = CAUTION_FACTS.flatMap(
    (field) => plant.facts.find((fact) => fact.field === field && typeof fact.value === 'string') ?? [],
  );
  if (known.length === 0) return null;
  return (
    <div className="plant-cautions">
      <Callout tone="caution">
        {known.map((fact) => (
          <p key={fact.field} className="plant-caution">
            {String(fact.value)} <StandingMark standing={fact.standing} source={fact.source} />
          </p>
        ))}
        <p>{plants.page.defer}</p>
      </Callout>
    </div>
  );
}
