/** The batches that were started under the protocol, whatever its version then. */
import type { propagation as contracts } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ButtonLink, RowLink } from '../../../../ui/action/index.ts';
import { Section } from '../../../../ui/layout/index.ts';

export function BatchesSection({ protocol }: { protocol: contracts.ProtocolPage }) {
  const { propagation } = useMessages();
  const { page: say } = propagation.protocols;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  return (
    <Section
      title={say.batches}
      actions={mayBe(FIELD) && !protocol.isRetired && <ButtonLink to={paths.startBatch()}>{say.startBatch}</ButtonLink>}
    >
      {protocol.batches.length === 0 && <p>{say.noBatches}</p>}
      <ul className="protocol-rows">
        {protocol.batches.map((batch) => (
          <li key={batch.batchId} className="protocol-row">
            <p>
              <RowLink to={paths.batch(batch.batchId)}>{batch.code}</RowLink>{' '}
              {say.batchLine(
                propagation.units(batch.startedUnits, batch.unit),
                dates.short(batch.startedOn),
                batch.versionNumber,
              )}
            </p>
            <p className="protocol-facts">
              {[
                batch.emergedUnits === null ? '' : say.alive(batch.emergedUnits),
                batch.closedOn ? say.closed(dates.short(batch.closedOn)) : '',
              ]
                .filter(Boolean)
                .join(' · ')}
            </p>
          </li>
        ))}
      </ul>
    </Section>
  );
}
