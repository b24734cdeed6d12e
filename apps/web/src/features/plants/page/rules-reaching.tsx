/** The pot-life rules that reach a plant, the most particular first: of each kind the first one counts. */
import type { plants as contracts } from '@rootclock/contracts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { useSpanWords } from '../span-words.ts';

export function RulesReaching({ plant }: { plant: contracts.PlantPage }) {
  const { plants, rules: say } = useMessages();
  const standsIn = new Set(plant.standing.map(({ containerName }) => containerName));
  const isNear = ({ containerName }: contracts.PlantRuleRow) => containerName === null || standsIn.has(containerName);
  const near = plant.rules.filter(isNear);
  const others = plant.rules.filter((rule) => !isNear(rule));
  return (
    <Section
      title={plants.page.rules}
      aside={say.rulesCount(plant.rules.length)}
      actions={<ButtonLink to={paths.rules()}>{say.title}</ButtonLink>}
    >
      {plant.rules.length === 0 && <p>{plants.page.noRules}</p>}
      <RuleList plant={plant} rules={near} />
      {others.length > 0 && (
        <details className="rules-elsewhere">
          <summary>{plants.page.rulesElsewhere(others.length)}</summary>
          <RuleList plant={plant} rules={others} />
        </details>
      )}
    </Section>
  );
}

function RuleList({ plant, rules }: { plant: contracts.PlantPage; rules: readonly contracts.PlantRuleRow[] }) {
  const { plants, rules: say } = useMessages();
  const span = useSpanWords();
  const roots = say.who.rootHabit(plants.rootHabits[plant.rootHabit]);
  const whom = (rule: contracts.PlantRuleRow): string => {
    const who = {
      plant: plant.scientificName,
      'plant-container': plant.scientificName,
      genus: say.who.genus(plant.scientificName.split(' ')[0] ?? ''),
      'root-habit': roots,
      'root-habit-container': roots,
    }[rule.reach];
    return rule.containerName === null ? who : say.who.inContainer(who, rule.containerName);
  };
  return (
    <ul className="rule-list">
      {rules.map((rule) => (
        <li key={rule.id} className="rule-item">
          <strong>{whom(rule)}.</strong> {say.sentences[rule.basis](span(rule.span))}{' '}
          {rule.winterCarry && say.carry(rule.winterCarry.maxDays, rule.winterCarry.graceDays)}{' '}
          <StandingMark standing={rule.standing} />
        </li>
      ))}
    </ul>
  );
}
