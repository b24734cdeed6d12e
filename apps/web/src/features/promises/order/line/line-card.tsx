/** LineCard: what is wanted, how far it has come, which lots serve it, and where it is short, why. */
import type { promises as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../../messages/index.ts';
import { Progress } from '../../marks/progress.tsx';
import { LineFlags } from '../../marks/line-flags.tsx';
import { Taxon } from '../../../plants/taxon.tsx';
import type { LineCardProps } from './line-props.ts';
import { LineNatives } from '../../marks/line-natives.tsx';
import { LineActions } from './line-actions.tsx';
import { LineShortage } from './line-shortage.tsx';
import { LineSupplies } from './line-supplies.tsx';

export function LineCard({ order, line, mayChange }: LineCardProps) {
  const { orders, promises } = useMessages();
  const words = promises.line;
  const isOpen = line.withdrawnOn === null && order.state === 'open';
  return (
    <article
      className="line-card"
      aria-label={`${line.scientificName}, ${orders.inContainer(line.units, line.containerName)}`}
    >
      <header className="line-head">
        <div className="line-words">
          <h3>
            <Taxon name={line.scientificName} />
          </h3>
          {line.vernacularName && <p className="line-common">{line.vernacularName}</p>}
          <p className="line-asked">
            {orders.inContainer(line.units, line.containerName)}
            {line.bedName && `, ${line.bedName}`}
          </p>
          {line.kit && <p className="line-conditions">{orders.kits.partOf(line.kit.name, line.kit.units)}</p>}
          <LineConditions line={line} />
          {line.withdrawnOn && <p>{words.withdrawnOn(line.withdrawnOn)}</p>}
        </div>
        {mayChange && isOpen && <LineActions order={order} line={line} />}
      </header>
      {line.withdrawnOn === null && <Progress kind={order.kind} wantedUnits={line.units} {...countsOf(line)} />}
      {order.state === 'done' && line.withdrawnOn === null && line.deliveredUnits < line.units && (
        <p>{words.undelivered(line.units - line.deliveredUnits)}</p>
      )}
      {isOpen && <LineNatives line={line} region={order.region} />}
      {isOpen && (
        <LineFlags
          line={{
            ...line,
            flags: line.notNatives.length > 0 ? line.flags.filter((flag) => flag !== 'not-native') : line.flags,
          }}
          region={order.region}
        />
      )}
      {isOpen && line.shortUnits > 0 && <LineShortage order={order} line={line} mayChange={mayChange} />}
      <LineSupplies line={line} mayChange={mayChange && isOpen} />
    </article>
  );
}

const countsOf = ({ reservedUnits, stagedUnits, deliveredUnits, shortUnits }: contracts.OrderLineRow) => ({
  reservedUnits,
  stagedUnits,
  deliveredUnits,
  shortUnits,
});

function LineConditions({ line }: { line: contracts.OrderLineRow }) {
  const { promises } = useMessages();
  const words = promises.line;
  const conditions = [
    line.seedZone && words.seedZoneIs(line.seedZone),
    line.wildType && words.wildType,
    line.untreated && words.untreated,
  ].filter(Boolean);
  return (
    <>
      {conditions.length > 0 && <p className="line-conditions">{conditions.join(' · ')}</p>}
      {line.alternatives.map((alternative) => (
        <p key={`${alternative.plantId}/${alternative.containerId}`} className="line-conditions">
          {words.also} <Taxon name={alternative.scientificName} />, {alternative.containerCode} (
          {words.penaltyIs(alternative.penalty)})
        </p>
      ))}
    </>
  );
}
