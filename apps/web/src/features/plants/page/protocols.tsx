/** How the plant is propagated here: its protocols, each with how long it takes and what gets ready. */
import { GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink, TextLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';

export function Protocols({ plantId, isRetired }: { plantId: string; isRetired: boolean }) {
  const { propagation } = useMessages();
  const { protocols: say } = propagation;
  const { numbers } = useFormat();
  const { mayBe } = useSession();
  const query = useQuery(trpc.propagation.listProtocols.queryOptions({ plantId }));
  return (
    <Section
      title={say.page.ofPlant}
      actions={
        mayBe(GROWERS) &&
        !isRetired && (
          <ButtonLink to={paths.newProtocol()} search={{ plant: plantId }}>
            {say.list.add}
          </ButtonLink>
        )
      }
    >
      <Read query={query} lines={2}>
        {({ rows }) => {
          const protocols = rows[0]?.protocols ?? [];
          if (protocols.length === 0) return <p>{say.page.ofPlantNone}</p>;
          return (
            <ul className="plant-handling">
              {protocols.map((protocol) => (
                <li key={protocol.protocolId}>
                  <TextLink to={paths.protocol(protocol.protocolId)}>
                    {[propagation.methods[protocol.method], protocol.label].filter(Boolean).join(', ')}
                  </TextLink>{' '}
                  {say.total(say.range(protocol.totalDays))},{' '}
                  {say.ofHundred(numbers.count(Math.round(protocol.shareReady * 100)))}{' '}
                  <StandingMark standing={protocol.standing} />
                </li>
              ))}
            </ul>
          );
        }}
      </Read>
    </Section>
  );
}
