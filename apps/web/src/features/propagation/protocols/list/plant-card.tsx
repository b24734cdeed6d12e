/** One plant with its protocols: how long each takes, how long it is cold, and what gets ready, with the word the method rests on. */
import type { propagation as contracts } from '@rootclock/contracts';
import { paths } from '../../../../lib/paths.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { RowLink, TextLink } from '../../../../ui/action/index.ts';
import { StandingMark } from '../../../../ui/sign/index.ts';
import { PlantName } from '../../../plants/plant-name.tsx';

export function PlantCard({ plant, mayWrite }: { plant: contracts.PlantProtocols; mayWrite: boolean }) {
  const { list: say } = useMessages().propagation.protocols;
  return (
    <article className="protocol-plant">
      <h2 className="protocol-plant-name">
        <PlantName name={plant.scientificName} /> <span className="protocol-plant-common">{plant.vernacularName}</span>
      </h2>
      {plant.protocols.length === 0 && (
        <p>
          {say.none}{' '}
          {mayWrite && (
            <TextLink
              to={paths.newProtocol()}
              search={{ plant: plant.plantId }}
              aria-label={say.addFor(plant.scientificName)}
            >
              {say.addShort}
            </TextLink>
          )}
        </p>
      )}
      <ul className="protocol-rows">
        {plant.protocols.map((protocol) => (
          <ProtocolLine key={protocol.protocolId} protocol={protocol} />
        ))}
      </ul>
    </article>
  );
}

export function ProtocolLine({ protocol }: { protocol: contracts.ProtocolRow }) {
  const { propagation } = useMessages();
  const { protocols: say } = propagation;
  const { numbers } = useFormat();
  const facts = [
    say.total(say.range(protocol.totalDays)),
    protocol.coldDays ? say.cold(say.range(protocol.coldDays)) : protocol.method === 'seed' ? say.noCold : '',
    say.ofHundred(numbers.count(Math.round(protocol.shareReady * 100))),
    protocol.openBatches > 0 ? say.list.open(protocol.openBatches) : '',
  ].filter(Boolean);
  return (
    <li className="protocol-row">
      <p>
        <RowLink to={paths.protocol(protocol.protocolId)}>{propagation.methods[protocol.method]}</RowLink>
        {protocol.label && <>, {protocol.label}</>}{' '}
        <span className="protocol-soft">{say.list.version(protocol.number)}</span>{' '}
        <StandingMark standing={protocol.standing} />
      </p>
      <p className="protocol-facts">{facts.join(' · ')}</p>
    </li>
  );
}
