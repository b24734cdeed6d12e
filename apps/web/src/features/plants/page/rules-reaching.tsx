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
  const span = useSpanWords();
  const genus = plant.scientificName.split(' ')[0] ?? '';
  const whom = (rule: contracts.PlantRuleRow): string => {
    const who = { plant: plant.scientificName, 'plant-container': plant.scientificName, genus: say.who.genus(genus), 'root-habit': say.who.rootHabit(plants.rootHabits[plant.rootHabit]), 'root-habit-container': say.who.rootHabit(plants.rootHabits[plant.rootHabit]) }[rule.reach];
    return rule.containerName === null ? who : say.who.inContainer(who, rule.containerName);
  };
  return (
    <Section title={plants.page.rules} aside={say.rulesCount(plant.rules.length)} actions={<ButtonLink to={paths.rules()}>{say.title}</ButtonLink>}>
      {plant.rules.length === 0 && <p>{plants.page.noRules}</p>}
      <ul className="rule-list">
        {plant.rules.map((rule) => (
          <li key={rule.id} className="rule-item">
            <strong>{whom(rule)}.</strong> {say.sentences[rule.basis](span(rule.span))} {rule.winterCarry && say.carry(rule.winterCarry.maxDays, rule.winterCarry.graceDays)}{' '}
            <StandingMark standing={rule.standing} />
          </li>
        ))}
      </ul>
    </Section>
  );
}
