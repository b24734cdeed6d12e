/** The stages one after the other: how long each takes, what comes through, under which conditions, and what each figure rests on. */
import type { propagation as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { StandingMark } from '../../../../ui/sign/index.ts';
import { useConditions } from '../use-conditions.ts';

export function StagesSection({ version }: { version: contracts.ProtocolVersionPage }) {
  const { protocols: say } = useMessages().propagation;
  return (
    <Section title={say.page.stages}>
      <ol className="protocol-stages">
        {version.stages.map((stage) => (
          <Stage key={stage.kind} stage={stage} />
        ))}
      </ol>
    </Section>
  );
}

function Stage({ stage }: { stage: contracts.ProtocolStageRow }) {
  const { protocols: say, stages } = useMessages().propagation;
  const { numbers } = useFormat();
  const conditions = useConditions().all(stage);
  const takesNone = stage.longDays === 0;
  return (
    <li className="protocol-stage">
      <h3>{stages.names[stage.kind]}</h3>
      <p>
        {takesNone
          ? say.page.noTime
          : say.range({ short: stage.shortDays, usual: stage.usualDays, long: stage.longDays })}{' '}
        <StandingMark standing={stage.durationStanding} source={stage.durationSource} />
      </p>
      {/* What everything passes and nobody published says nothing: a figure of no interest beside so many. */}
      {(stage.share < 1 || stage.shareSource !== null) && (
        <p>
          {say.page.passes(numbers.share(stage.share))}{' '}
          <StandingMark standing={stage.shareStanding} source={stage.shareSource} />
        </p>
      )}
      {conditions.length > 0 && <p className="protocol-facts">{conditions.join(' · ')}</p>}
      {stage.note && <p className="protocol-note">{stage.note}</p>}
    </li>
  );
}
