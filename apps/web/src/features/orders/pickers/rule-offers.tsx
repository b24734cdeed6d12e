/** RuleOffers: what the nursery's rules offer a line while it is typed, each with its reason; taken with one tap, one by one or all. */
import { useQuery } from '@tanstack/react-query';
import type { orders as contracts } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';
import { newCommandId } from '../../../lib/ids.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Taxon } from '../../plants/taxon.tsx';
import type { Alternative, Conditions } from './condition-fields.tsx';
import type { Item } from './item-pickers.tsx';
import { useOfferWords } from './offer-words.ts';

const MOST_ALTERNATIVES = 20;

export interface RuleOffersProps {
  item: Item;
  siteId: string | null;
  nativesOnly: boolean;
  value: Conditions;
  onChange: (conditions: Conditions) => void;
}

const isOf =
  (offer: contracts.OfferedAlternative) =>
  ({ plant, container }: Alternative) =>
    plant?.id === offer.plantId && container?.id === offer.containerId;

const asAlternative = ({
  plantId,
  scientificName,
  containerId,
  containerName,
  penalty,
}: contracts.OfferedAlternative): Alternative => ({
  key: newCommandId(),
  plant: { id: plantId, scientificName },
  container: { id: containerId, name: containerName },
  penalty,
});

export function RuleOffers({ item, siteId, nativesOnly, value, onChange }: RuleOffersProps) {
  const { offer: say } = useMessages().substitutes;
  const isAsked = item.plant !== null && item.container !== null;
  const query = useQuery({
    ...trpc.orders.alternativesFor.queryOptions({
      plantId: item.plant?.id ?? '',
      containerId: item.container?.id ?? '',
      siteId,
      nativesOnly,
    }),
    enabled: isAsked,
  });
  const answer = isAsked ? query.data : undefined;
  if (!answer?.hasRules) return null;
  const open = answer.alternatives.filter((offer) => !value.alternatives.some(isOf(offer)));
  const taken = answer.alternatives.length - open.length;
  const room = Math.max(0, MOST_ALTERNATIVES - value.alternatives.length);
  const take = (offers: readonly contracts.OfferedAlternative[]) =>
    onChange({
      ...value,
      alternatives: [...value.alternatives, ...offers.map(asAlternative)].toSorted(
        (a, b) => (a.penalty ?? 0) - (b.penalty ?? 0),
      ),
    });
  return (
    <section className="rule-offers" aria-label={say.title}>
      <p role="status">{[say.found(open.length), say.taken(taken)].filter(Boolean).join(' ')}</p>
      {open.length > 0 && room === 0 && <p>{say.full}</p>}
      {open.length > 0 && room > 0 && (
        <div>
          <Button onClick={() => take(open.slice(0, room))}>{say.takeAll(Math.min(open.length, room))}</Button>
        </div>
      )}
      {(open.length > 0 || isSilent(answer)) && (
        <details className="foldable">
          <summary>{open.length > 0 ? say.which : say.whyNone}</summary>
          {open.length > 0 && (
            <ul className="rule-offer-list">
              {open.map((offer) => (
                <Offer
                  key={`${offer.plantId}/${offer.containerId}`}
                  offer={offer}
                  region={answer.region}
                  onTake={room > 0 ? () => take([offer]) : null}
                />
              ))}
            </ul>
          )}
          <Silence answer={answer} />
        </details>
      )}
    </section>
  );
}

function Offer({
  offer,
  region,
  onTake,
}: {
  offer: contracts.OfferedAlternative;
  region: string | null;
  onTake: (() => void) | null;
}) {
  const { substitutes } = useMessages();
  const { offer: say } = substitutes;
  const words = useOfferWords();
  return (
    <li className="rule-offer">
      <div>
        <p>
          <Taxon name={offer.scientificName} />, {offer.containerName}
        </p>
        <p>{words.reason(offer, region)}</p>
        <p className="field-hint">
          {say.standing(offer.onHandUnits, offer.growingUnits)}. {substitutes.penalty(offer.penalty)}.
        </p>
      </div>
      {onTake && (
        <Button look="quiet" aria-label={say.takeOne(offer.scientificName, offer.containerName)} onClick={onTake}>
          {say.take}
        </Button>
      )}
    </li>
  );
}

const isSilent = ({ idle, notNative, untold }: contracts.OfferedAlternatives) =>
  idle.length + notNative.length + untold.length > 0;

/** Why rules say nothing or less than they might, so that nobody takes silence for an answer. */
function Silence({ answer: { idle, notNative, untold, region } }: { answer: contracts.OfferedAlternatives }) {
  const { offer: say } = useMessages().substitutes;
  const words = useOfferWords();
  return (
    <>
      {idle.map(({ kind, why, untold: traits }) => (
        <p key={kind}>{why === 'no-region' ? say.noRegion : say.untoldTraits(words.traits(traits))}</p>
      ))}
      {notNative.length > 0 && <Named lead={say.leftOut(region)} names={notNative} />}
      {untold.length > 0 && <Named lead={say.passedOver} names={untold} />}
    </>
  );
}

function Named({ lead, names }: { lead: string; names: readonly string[] }) {
  return (
    <p>
      {lead}{' '}
      {names.map((name, index) => (
        <span key={name}>
          {index > 0 && ', '}
          <Taxon name={name} />
        </span>
      ))}
    </p>
  );
}
