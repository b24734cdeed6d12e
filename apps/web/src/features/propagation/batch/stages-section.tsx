/** The stages of a batch, one under the other: which are done, which it is in and whether that takes too long, and what comes when. */
import { FIELD, isCurrentStage } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { paths } from '../../../lib/paths.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { Badge, type BadgeShape, Callout, toast } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';
import { useReverse } from '../use-reverse.ts';
import './stages.css';

type Protocol = NonNullable<BatchPageData['protocol']>;
type Stage = Protocol['stages'][number];

const SHAPES: Record<Stage['state'], BadgeShape> = { done: 'full', current: 'half', late: 'over', coming: 'open' };

export function StagesSection({ batch, onOther }: { batch: BatchPageData; onOther: () => void }) {
  const { stages: say } = useMessages().propagation;
  const { mayBe } = useSession();
  const { dates } = useFormat();
  const { protocol } = batch;
  if (!protocol) return null;
  const current = protocol.stages.find(isCurrentStage);
  const mayBegin = mayBe(FIELD) && batch.closedOn === null;
  const daysOver = current?.state === 'late' ? -dates.daysLeft(current.lateOn) : 0;
  return (
    <Section
      title={say.title}
      aside={
        <TextLink to={paths.protocol(protocol.protocolId)}>{say.protocol(protocol.label, protocol.number)}</TextLink>
      }
    >
      {!protocol.isCurrent && <p>{say.olderVersion}</p>}
      {current?.state === 'late' && batch.closedOn === null && (
        <Callout tone="caution">
          <p>
            {say.lateSince(say.names[current.kind], daysOver)} {say.lateHint}
          </p>
        </Callout>
      )}
      <ol className="stages">
        {protocol.stages.map((stage) => (
          <li
            key={stage.position}
            className={`stage stage-${stage.state}`}
            aria-current={isCurrentStage(stage) ? 'step' : undefined}
          >
            <StageLine
              stage={stage}
              ended={batch.closedOn !== null}
              asks={[0, 1].includes(stage.position - (current?.position ?? -1))}
            />
            {mayBegin && stage.position === (current?.position ?? -1) + 1 && <BeginToday batch={batch} stage={stage} />}
          </li>
        ))}
      </ol>
      {mayBegin && (
        <div className="row">
          <Button look="quiet" onClick={onOther}>
            {say.beginOther}
          </Button>
        </div>
      )}
    </Section>
  );
}

/** What it needs is said of the stage it is in and of the next one; the protocol's page says the rest. */
function StageLine({ stage, ended, asks }: { stage: Stage; ended: boolean; asks: boolean }) {
  const { stages: say } = useMessages().propagation;
  const { dates, measures } = useFormat();
  const basis = stage.basis && say.basis[stage.basis];
  const { temperatureLowC: low, temperatureHighC: high } = stage;
  const degrees = (celsius: number | null) => (celsius === null ? null : measures.temperature(celsius));
  const when =
    stage.begunOn !== null
      ? `${say.begun(dates.short(stage.begunOn))}${basis ? ` ${basis}` : ''}`
      : stage.state === 'done'
        ? say.passedOver
        : dates.daysLeft(stage.shouldBeginOn) < 0
          ? say.shouldHave(dates.short(stage.shouldBeginOn))
          : say.shouldBegin(dates.short(stage.shouldBeginOn), dates.fromToday(stage.shouldBeginOn));
  const conditions = [
    say.takes(stage.shortDays, stage.usualDays, stage.longDays),
    ...(asks
      ? [low !== null || high !== null ? say.temperature(degrees(low), degrees(high)) : null, stage.medium]
      : []),
  ]
    .filter(Boolean)
    .join(', ');
  return (
    <div className="stage-text">
      <p className="stage-head">
        <span className="stage-name">{say.names[stage.kind]}</span>{' '}
        <Badge shape={SHAPES[stage.state]}>{say.states[stage.state]}</Badge>
      </p>
      <p>
        {when}
        {isCurrentStage(stage) &&
          stage.kind !== 'ready' &&
          !ended &&
          `, ${say.due(dates.short(stage.dueOn), dates.fromToday(stage.dueOn))}`}
      </p>
      <p className="stage-conditions">
        {conditions}{' '}
        {stage.longDays > 0 && <StandingMark standing={stage.durationStanding} source={stage.durationSource} />}
      </p>
      {asks && stage.note && <p className="stage-conditions">{stage.note}</p>}
    </div>
  );
}

/** One tap; the day can be set right by saying it again, and the toast takes it back. */
function BeginToday({ batch, stage }: { batch: BatchPageData; stage: Stage }) {
  const { stages: say } = useMessages().propagation;
  const { today } = useSession();
  const reverse = useReverse();
  const name = say.names[stage.kind];
  const begin = useCommand('propagation.beginBatchStage', { title: `${say.beginTitle}: ${batch.code}, ${name}` });
  const send = () => {
    begin
      .send({ batchId: batch.batchId, position: stage.position, happenedOn: today, note: '' })
      .then(({ entryId }) => toast({ text: say.began(name), undo: () => reverse(entryId) }), tellRefused);
  };
  return (
    <Button busy={begin.state === 'sending'} onClick={send}>
      {say.beginToday(name)}
    </Button>
  );
}
