/** ProtocolFields: which of the plant's protocols the batch keeps, the stage it begins with, and the days that follow from it. */
import { readyFrom, stageBeginnings, stageProgress } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import type { StartProtocol } from '../yields/suggestion.ts';
import './start.css';

export interface ProtocolFieldsProps {
  protocols: readonly StartProtocol[];
  chosen: StartProtocol | null;
  stagePosition: string;
  /** The day it is started on; empty or wrong while it is typed. */
  startedOn: string | null;
  onProtocol: (protocol: StartProtocol | null) => void;
  onStage: (position: string) => void;
}

export function ProtocolFields({
  protocols,
  chosen,
  stagePosition,
  startedOn,
  onProtocol,
  onStage,
}: ProtocolFieldsProps) {
  const { propagation } = useMessages();
  const { starting: say, stages } = propagation;
  if (protocols.length === 0) return null;
  const position = Number(stagePosition || 0);
  return (
    <>
      <SelectField
        name="protocolVersionId"
        label={say.protocol}
        optional="unsaid"
        empty={say.noProtocol}
        hint={chosen ? undefined : say.protocolHint(protocols.length)}
        value={chosen?.versionId ?? ''}
        onChange={(versionId) => onProtocol(protocols.find((protocol) => protocol.versionId === versionId) ?? null)}
        choices={protocols.map(({ versionId, method, label, number }) => ({
          value: versionId,
          label: say.protocolName(propagation.methods[method], label, number),
        }))}
      />
      {chosen && (
        <SelectField
          name="stagePosition"
          label={say.stage}
          hint={say.stageHint}
          value={String(position)}
          onChange={onStage}
          choices={chosen.stages.map(({ kind }, at) => ({ value: String(at), label: stages.names[kind] }))}
        />
      )}
      {chosen && startedOn !== null && <StageDays protocol={chosen} position={position} startedOn={startedOn} />}
    </>
  );
}

/** At the usual pace, as the batch's own page will reckon it; a start that is written down late is not ready sooner for it. */
function StageDays({
  protocol,
  position,
  startedOn,
}: {
  protocol: StartProtocol;
  position: number;
  startedOn: string;
}) {
  const { starting: say, stages: words } = useMessages().propagation;
  const { dates } = useFormat();
  const { today } = useSession();
  const plan = { stages: protocol.stages, dormantMonths: protocol.dormantMonths };
  const begun = stageBeginnings(plan, [
    {
      version: 1,
      starts: true,
      kind: 'start',
      happenedOn: startedOn,
      stagePosition: position,
      emergedUnits: null,
      pottedPlants: 0,
    },
  ]);
  const progress = stageProgress(plan, startedOn, begun, today);
  const readyOn = readyFrom(plan, progress, today, 'usual');
  if (readyOn === null) return null;
  return (
    <details className="start-more">
      <summary>{say.stagesTitle(dates.short(readyOn))}</summary>
      <ol className="start-stages">
        {progress.slice(position).map(({ kind, begunOn, shouldBeginOn }) => (
          <li key={kind}>
            <span>{words.names[kind]}</span>{' '}
            <time dateTime={begunOn ?? shouldBeginOn}>{dates.short(begunOn ?? shouldBeginOn)}</time>
          </li>
        ))}
      </ol>
    </details>
  );
}
