/** Every version with its day, its writer and why it was written, and what the shown one says differently from the one before. */
import type { propagation as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { TextLink } from '../../../../ui/action/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { useChanges } from './use-changes.ts';

export function VersionsSection({ protocol }: { protocol: contracts.ProtocolPage }) {
  const { page: say } = useMessages().propagation.protocols;
  const { dates } = useFormat();
  const { version, before, versions, currentVersionId, protocolId } = protocol;
  return (
    <Section title={say.versions} aside={say.versionsCount(versions.length)}>
      <ul className="protocol-versions">
        {versions.map((row) => {
          const marks = [
            row.versionId === currentVersionId ? say.inUse : '',
            row.versionId === version.versionId ? say.shown : '',
            say.batchesUnder(row.batches, row.openBatches),
          ].filter(Boolean);
          return (
            <li key={row.versionId} className="protocol-version">
              <p>
                <strong>{say.version(row.number, dates.long(row.madeOn))}</strong>,{' '}
                {row.personName ? say.byPerson(row.personName) : say.fromReference}{' '}
                <span className="protocol-soft">({marks.join(', ')})</span>
              </p>
              {row.changeNote && <p>{row.changeNote}</p>}
              {row.versionId !== version.versionId && (
                <TextLink
                  to={paths.protocol(protocolId)}
                  search={row.versionId === currentVersionId ? {} : { version: row.versionId }}
                >
                  {say.show(row.number)}
                </TextLink>
              )}
            </li>
          );
        })}
      </ul>
      {before && <Changes before={before} after={version} />}
    </Section>
  );
}

function Changes({ before, after }: { before: contracts.ProtocolVersionPage; after: contracts.ProtocolVersionPage }) {
  const { page: say } = useMessages().propagation.protocols;
  const changes = useChanges(before, after);
  return (
    <div className="protocol-changes">
      <h3>{say.changes(before.number, after.number)}</h3>
      <ul>
        {changes.map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
    </div>
  );
}
