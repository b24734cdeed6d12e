/**
 * PromiseCheck: while a line is still being typed, how many of it can be promised without shortening anybody, from which lots and batches, and
 * where that is not all of them, what stands in the way, on which day it would be, and what else would do.
 */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { promises as contracts } from '@rootclock/contracts';
import { besidesWholeTrays, isCalendarDate, MAX_UNITS } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import { newCommandId } from '../../../lib/ids.ts';
import { useRested } from '../../../lib/use-rested.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { PlanMark } from '../../pot-life/plan-mark.tsx';
import { Taxon } from '../../plants/taxon.tsx';
import { ShortageReasons } from './shortage-reasons.tsx';
import { type Conditions, conditionsBody } from '../../orders/pickers/condition-fields.tsx';
import type { Item } from '../../orders/pickers/item-pickers.tsx';
import './promise-check.css';

export interface PromiseCheckProps {
  item: Item;
  units: number | null;
  on: string;
  siteId: string | null;
  clientId: string | null;
  nativesOnly: boolean;
  conditions: Conditions;
  onConditions: (conditions: Conditions) => void;
  /** Left out where the day is not for this form to change. */
  onDay?: (on: string) => void;
}

export function PromiseCheck({
  item,
  units,
  on,
  siteId,
  clientId,
  nativesOnly,
  conditions,
  onConditions,
  onDay,
}: PromiseCheckProps) {
  const { promises } = useMessages();
  const words = promises.check;
  const rested = useRested(String(units ?? ''));
  const asked = Number(rested);
  const isAsked = item.plant !== null && item.container !== null && isCalendarDate(on);
  const { seedZone, wildType, untreated, alternatives } = conditionsBody(conditions);
  const query = useQuery({
    ...trpc.promises.checkPromise.queryOptions({
      plantId: item.plant?.id ?? '',
      containerId: item.container?.id ?? '',
      on,
      siteId,
      clientId,
      seedZone: seedZone.trim() || null,
      wildType,
      untreated,
      nativesOnly,
      // Nobody said how many yet: the answer is how many there could be.
      units: asked >= 1 && asked <= MAX_UNITS ? asked : MAX_UNITS,
      alternatives: alternatives.filter(({ plantId, containerId }) => plantId !== '' && containerId !== ''),
    }),
    enabled: isAsked,
    placeholderData: keepPreviousData,
  });
  if (!isAsked) return null;
  if (!query.data)
    return (
      <p className="promise-check" role="status">
        {query.isError ? '' : words.checking}
      </p>
    );
  const { data } = query;
  // Of the most that can be asked for, too, only whole trays are looked at.
  const isOpen = data.askedUnits > MAX_UNITS - (data.cells ?? 1);
  const besides = isOpen || !(asked >= 1) ? null : besidesWholeTrays(asked, data.cells);
  const isMet = data.units === data.askedUnits;
  const accept = (other: contracts.PromiseInstead) => {
    const added = {
      key: newCommandId(),
      plant: { id: other.plantId, scientificName: other.scientificName },
      container: { id: other.containerId, name: other.containerName },
    };
    onConditions({ ...conditions, alternatives: [...conditions.alternatives, added] });
  };
  const sentence = isOpen
    ? words.most(data.units, data.on)
    : isMet
      ? words.all(data.units, data.on)
      : words.some(data.units, data.askedUnits, data.on);
  return (
    <div className={`promise-check ${isOpen || isMet ? '' : 'promise-check-short'}`}>
      <PlanMark about="answer" />
      <p role="status">
        <span className="promise-check-word">{sentence}</span>
        {besides && ` ${words.wholeTrays(besides.cells, besides.below, besides.above)}`}
        {data.from.length > 0 && ` ${words.from(data.from)}`}
      </p>
      {!isOpen && !isMet && (
        <>
          <h3 className="promise-check-head">{words.why}</h3>
          <ShortageReasons reasons={data.reasons} />
          <h3 className="promise-check-head">{words.whatElse}</h3>
          <ul className="plain-list promise-check-ways">
            {data.lastBeforeOn && (
              <DayWay
                text={words.lastBeforeOn(data.askedUnits, data.lastBeforeOn)}
                on={data.lastBeforeOn}
                onDay={onDay}
              />
            )}
            {data.firstOn ? (
              <DayWay text={words.firstOn(data.askedUnits, data.firstOn)} on={data.firstOn} onDay={onDay} />
            ) : (
              <li>{words.never}</li>
            )}
            {data.instead
              .filter(
                (other) =>
                  !alternatives.some(
                    ({ plantId, containerId }) => plantId === other.plantId && containerId === other.containerId,
                  ),
              )
              .map((other) => (
                <li key={`${other.plantId}/${other.containerId}`}>
                  <span>
                    <Taxon name={other.scientificName} />: {words.instead(other.units, other.containerName)}
                  </span>
                  <Button
                    look="quiet"
                    aria-label={words.acceptToo(other.scientificName, other.containerName)}
                    onClick={() => accept(other)}
                  >
                    {words.accept}
                  </Button>
                </li>
              ))}
          </ul>
        </>
      )}
    </div>
  );
}

function DayWay({ text, on, onDay }: { text: string; on: string; onDay: ((on: string) => void) | undefined }) {
  const { promises } = useMessages();
  return (
    <li>
      <span>{text}</span>
      {onDay && (
        <Button look="quiet" onClick={() => onDay(on)}>
          {promises.check.moveTo(on)}
        </Button>
      )}
    </li>
  );
}
