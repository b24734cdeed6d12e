/** One protocol: its stages, what they lead to on which days, what was written about it, its versions and its batches. */
import type { propagation as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useLanguage, useMessages } from '../../../../messages/index.ts';
import { ButtonLink, TextLink } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { StandingMark } from '../../../../ui/sign/index.ts';
import { PlantName } from '../../../plants/plant-name.tsx';
import { BatchesSection } from './batches-section.tsx';
import { MethodSection } from './method-section.tsx';
import { RetireProtocol } from './retire-protocol.tsx';
import { ScheduleSection } from './schedule-section.tsx';
import { StagesSection } from './stages-section.tsx';
import { VersionsSection } from './versions-section.tsx';
import { WordsSection } from './words-section.tsx';
import '../protocols.css';

export function ProtocolPage() {
  const { protocolId = '' } = useParams({ strict: false });
  const search: Record<string, unknown> = useSearch({ strict: false });
  const versionId = typeof search['version'] === 'string' ? search['version'] : null;
  const query = useQuery(trpc.propagation.readProtocol.queryOptions({ protocolId, versionId }));
  return <Read query={query}>{(protocol) => <Protocol protocol={protocol} />}</Read>;
}

function Protocol({ protocol }: { protocol: contracts.ProtocolPage }) {
  const { propagation } = useMessages();
  const { page: say } = propagation.protocols;
  const { dates } = useFormat();
  const { plant, version, method, label, currentVersionId } = protocol;
  const isCurrent = version.versionId === currentVersionId;
  const named = [say.by(propagation.methods[method]), label].filter(Boolean).join(', ');
  const who = version.personName ? say.byPerson(version.personName) : say.fromReference;
  return (
    <div className="stack">
      <PageHeader
        back={{ to: paths.protocols(), label: say.back }}
        kicker={say.kicker}
        title={
          <>
            <PlantName name={plant.scientificName} /> {named}
          </>
        }
        titleText={`${plant.scientificName} ${named}`}
        facts={
          <>
            <p>
              <TextLink to={paths.plant(plant.plantId)}>{plant.vernacularName || plant.code}</TextLink>
            </p>
            <p>
              {say.version(version.number, dates.long(version.madeOn))}, {who}.{' '}
              <StandingMark standing={version.standing} source={version.source} />
            </p>
          </>
        }
        actions={<Actions protocol={protocol} isCurrent={isCurrent} />}
      />
      {protocol.isRetired && <Callout tone="note">{say.retired}</Callout>}
      {!isCurrent && (
        <Callout
          tone="note"
          actions={<ButtonLink to={paths.protocol(protocol.protocolId)}>{say.toCurrent}</ButtonLink>}
        >
          {say.old(protocol.versions[0]?.number ?? version.number)}
        </Callout>
      )}
      <MethodSection protocol={protocol} />
      <StagesSection version={version} />
      <ScheduleSection protocol={protocol} />
      <WordsSection version={version} />
      <VersionsSection protocol={protocol} />
      <BatchesSection protocol={protocol} />
    </div>
  );
}

function Actions({ protocol, isCurrent }: { protocol: contracts.ProtocolPage; isCurrent: boolean }) {
  const { page: say } = useMessages().propagation.protocols;
  const { mayBe } = useSession();
  const language = useLanguage();
  return (
    <>
      {mayBe(GROWERS) && isCurrent && !protocol.isRetired && (
        <ButtonLink to={paths.reviseProtocol(protocol.protocolId)} look="primary">
          {say.revise}
        </ButtonLink>
      )}
      {/* A file of the server, not a page of the app: the browser's own link, in a tab of its own. */}
      <a
        className="button button-plain"
        href={paths.printedProtocol(protocol.version.versionId, language)}
        target="_blank"
        rel="noreferrer"
      >
        {say.print}
      </a>
      {mayBe(GROWERS) && <RetireProtocol protocol={protocol} />}
    </>
  );
}
