/** The handling rules of a plant, as pull lists print them, each with the word it stands on. */
import type { plants as contracts } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';

export function Handling({ plant }: { plant: contracts.PlantPage }) {
  const { plants } = useMessages();
  const saidOf = (rule: string) => plant.facts.find((fact) => fact.field === `handling.${rule}`);
  return (
    <Section title={plants.page.handling}>
      {plant.handling.length === 0 ? (
        <p>{plants.page.noHandling}</p>
      ) : (
        <ul className="plant-handling">
          {plant.handling.map((rule) => {
            const said = saidOf(rule);
            return (
              <li key={rule}>
                {plants.handling[rule]} {said && <StandingMark standing={said.standing} source={said.source} />}
              </li>
            );
          })}
        </ul>
      )}
    </Section>
  );
}
