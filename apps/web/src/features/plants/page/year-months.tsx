/** A plant's year at a glance: months in which it may stand without a leaf are hatched, months in bloom carry a dot. */
import type { plants as contracts } from '@rootclock/contracts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { useFactWords, useMonthNames } from '../facts/fact-value.tsx';

export function YearMonths({ plant }: { plant: contracts.PlantPage }) {
  const { page: say } = useMessages().plants;
  const { dates } = useFormat();
  const words = useFactWords();
  const short = useMonthNames('narrow');
  const saidOf = (field: string) => plant.facts.find((fact) => fact.field === field);
  const told = saidOf('bloomMonths')?.value;
  const bloom = Array.isArray(told) ? told.map(Number) : [];
  const dormancy = saidOf('dormantMonths');
  if (plant.dormantMonths.length === 0 && bloom.length === 0) return null;
  const until = plant.lastEmergenceMd === null ? '' : say.comesUp(dates.yearly(plant.lastEmergenceMd));
  const label = say.yearLabel(words('dormantMonths', plant.dormantMonths), words('bloomMonths', bloom), '');
  return (
    <Section title={say.year}>
      <div className="year-months" role="img" aria-label={label}>
        {short.map((name, index) => (
          <span
            key={index}
            className="year-month"
            data-dormant={plant.dormantMonths.includes(index + 1) || undefined}
            data-bloom={bloom.includes(index + 1) || undefined}
            aria-hidden="true"
          >
            {name}
            <span className="year-month-bloom" />
          </span>
        ))}
      </div>
      <div className="year-key">
        <span>
          <span className="year-key-hatch" aria-hidden="true" />
          {say.dormant}
        </span>
        <span>
          <span className="year-key-dot" aria-hidden="true" />
          {say.bloom}
        </span>
        {dormancy && <StandingMark standing={dormancy.standing} source={dormancy.source} />}
      </div>
      {until && <p>{until}</p>}
    </Section>
  );
}
