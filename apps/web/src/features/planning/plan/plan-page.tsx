/** What to start: batches by the week they begin in, what comes too late, what no batch is planned for, and the bench space it all takes. */
import { FIELD, GROWERS } from '@rootclock/domain';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { isText, useRemembered } from '../../../lib/remember.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { Callout, EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { PlaceSelect } from '../../propagation/place-select.tsx';
import { PlanningTabs } from '../planning-tabs.tsx';
import { BenchSection } from './bench-section.tsx';
import { GapsSection } from './gaps-section.tsx';
import { PlanLine } from './plan-line.tsx';
import { byWeek, type Plan } from './plan-words.ts';
import './plan.css';

const CONFIDENCES = ['0.5', '0.75', '0.8', '0.9', '0.95', '0.99'] as const;

export function PlanPage() {
  const { planning } = useMessages();
  const list = useListSearch({ sort: 'start', filters: ['sure'] });
  const confidence = CONFIDENCES.find((each) => each === list.filter('sure'));
  const query = useQuery({
    ...trpc.planning.readPlan.queryOptions({ confidence: confidence === undefined ? null : Number(confidence) }),
    placeholderData: keepPreviousData,
  });
  return (
    <div className="stack">
      <PlanningTabs />
      <PageHeader title={planning.plan.title} facts={query.data && <PlanFacts plan={query.data} />} />
      <Read query={query} lines={10}>
        {(plan) => (
          <div className="plan" data-stale={query.isPlaceholderData || undefined}>
            <Confidence plan={plan} value={confidence ?? ''} onChange={(value) => list.setFilter('sure', value)} />
            <PlanBody plan={plan} />
          </div>
        )}
      </Read>
    </div>
  );
}

function PlanFacts({ plan }: { plan: Plan }) {
  const { plan: say } = useMessages().planning;
  return (
    <>
      <p>{say.covers(plan.servedUnits, plan.missingUnits)}</p>
      <p>{say.madeOf(plan.counts.orderLines, plan.counts.expected)}</p>
    </>
  );
}

function Confidence({
  plan,
  value,
  onChange,
}: {
  plan: Plan;
  value: (typeof CONFIDENCES)[number] | '';
  onChange: (value: string) => void;
}) {
  const { plan: say } = useMessages().planning;
  const { numbers } = useFormat();
  return (
    <div className="plan-choice">
      <SelectField
        name="sure"
        label={say.confidence}
        hint={say.confidenceHint}
        optional="unsaid"
        empty={say.usualOf(numbers.share(plan.usualConfidence))}
        value={value}
        onChange={onChange}
        choices={CONFIDENCES.map((each) => ({ value: each, label: say.confidenceOf(numbers.share(Number(each))) }))}
      />
    </div>
  );
}

function PlanBody({ plan }: { plan: Plan }) {
  const { plan: say } = useMessages().planning;
  const { dates, numbers } = useFormat();
  const { mayBe } = useSession();
  const [placeId, keepPlace] = useRemembered('propagation.place', '', isText);
  const canStartNow =
    mayBe(FIELD) &&
    plan.lines.some(({ state, startOn }) => state === 'due' || (state === 'overdue' && startOn <= plan.today));
  return (
    <>
      {canStartNow && (
        <div className="plan-choice">
          <PlaceSelect
            name="placeId"
            label={say.place}
            hint={say.placeHint}
            optional="unsaid"
            value={placeId}
            onChange={keepPlace}
          />
        </div>
      )}
      {plan.lines.length === 0 && <Empty plan={plan} />}
      {byWeek(plan.lines).map(({ mondayOn, rows }) => (
        <Section
          key={mondayOn}
          title={mondayOn <= plan.today ? say.thisWeek(dates.long(mondayOn)) : say.weekOf(dates.long(mondayOn))}
          aside={say.batches(rows.length)}
        >
          <ul className="plan-lines">
            {rows.map((row) => (
              <li key={row.key}>
                <PlanLine row={row} placeId={placeId} />
              </li>
            ))}
          </ul>
        </Section>
      ))}
      {plan.within > 0 && <Callout tone="note">{say.within(numbers.part(Math.max(0.001, plan.within)))}</Callout>}
      {plan.tooLate.length > 0 && (
        <Section title={say.tooLate} aside={say.batches(plan.tooLate.length)}>
          <p>{say.tooLateLead}</p>
          <ul className="plan-lines">
            {plan.tooLate.map((row) => (
              <li key={row.key}>
                <PlanLine row={row} placeId={placeId} />
              </li>
            ))}
          </ul>
        </Section>
      )}
      <GapsSection plan={plan} />
      <BenchSection plan={plan} />
    </>
  );
}

/** Why there is no line: nobody wants anything, everything is there, or nothing can be done. */
function Empty({ plan }: { plan: Plan }) {
  const { plan: say, demand } = useMessages().planning;
  const { mayBe } = useSession();
  const { orderLines, expected } = plan.counts;
  if (orderLines + expected === 0) {
    return (
      <EmptyState
        kind="nothing-yet"
        title={say.nothingWantedTitle}
        actions={
          mayBe(GROWERS) && (
            <ButtonLink to={paths.expectedDemand()} look="primary">
              {demand.add}
            </ButtonLink>
          )
        }
      >
        {say.nothingWantedText}
      </EmptyState>
    );
  }
  if (plan.missingUnits === 0)
    return (
      <EmptyState kind="all-done" title={say.emptyTitle}>
        {say.emptyText}
      </EmptyState>
    );
  return (
    <EmptyState kind="nothing-matches" title={say.allElsewhereTitle}>
      {say.allElsewhereText}
    </EmptyState>
  );
}
