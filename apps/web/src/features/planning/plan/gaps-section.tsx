/** What is missing and no batch is planned for, each with its reason and the way on. */
import { GROWERS } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import type { GapRow, Plan } from './plan-words.ts';

export function GapsSection({ plan }: { plan: Plan }) {
  const { plan: say } = useMessages().planning;
  const { numbers } = useFormat();
  if (plan.gaps.length === 0) return null;
  const isShortOfSpace = plan.gaps.some(({ reason }) => reason === 'no-space');
  return (
    <Section title={say.gaps}>
      <p>{say.gapsLead}</p>
      {isShortOfSpace && <p>{say.neutral(numbers.money(plan.neutralValue, plan.currency))}</p>}
      <ul className="plan-gaps">
        {plan.gaps.map((gap) => (
          <li key={`${gap.forWhom.demandId} ${gap.reason}`}>
            <Gap gap={gap} currency={plan.currency} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Gap({ gap, currency }: { gap: GapRow; currency: string }) {
  const { plan: say } = useMessages().planning;
  const { dates, numbers } = useFormat();
  const { forWhom } = gap;
  const [first] = gap.fullWeeks;
  const last = gap.fullWeeks.at(-1);
  return (
    <>
      <p className="plan-gap-head">
        <Badge shape={gap.reason === 'no-space' ? 'half' : 'over'}>
          {say.gapOf(gap.units, dates.short(forWhom.on))}
        </Badge>
        <TextLink to={paths.plant(gap.plantId)}>
          <i lang="la">{gap.scientificName}</i>
        </TextLink>
        <span>{gap.containerName}</span>
        {forWhom.orderId === null ? (
          <span>
            {say.gapExpected(dates.short(forWhom.on), forWhom.note)}
            {forWhom.unitValue !== null && `, ${numbers.money(forWhom.unitValue, currency)}`}
          </span>
        ) : (
          <TextLink to={paths.order(forWhom.orderId)}>
            {say.gapOrder(forWhom.orderCode ?? '', forWhom.clientName ?? '', dates.short(forWhom.on))}
          </TextLink>
        )}
      </p>
      <p>
        {say.reasons[gap.reason]} {gap.grams && say.seedShort(gap.grams.needed, gap.grams.left)}
        {first && last && say.fullWeeks(dates.short(first), dates.short(last), gap.fullWeeks.length)}{' '}
        <WayOn gap={gap} />
      </p>
    </>
  );
}

function WayOn({ gap }: { gap: GapRow }) {
  const { plan: say } = useMessages().planning;
  const { mayBe } = useSession();
  switch (gap.reason) {
    case 'no-protocol':
      return mayBe(GROWERS) ? <TextLink to={paths.newProtocol()}>{say.writeProtocol}</TextLink> : null;
    case 'nothing-passes':
      return <TextLink to={paths.protocols()}>{say.seeProtocols}</TextLink>;
    case 'no-space':
      return <TextLink to={paths.places()}>{say.measurePlaces}</TextLink>;
    case 'too-far-ahead':
      return null;
    default:
      return <TextLink to={paths.sources()}>{say.addSource}</TextLink>;
  }
}
