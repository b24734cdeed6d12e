/** What is known of a plant, by what it is about; beside each value on whose word it stands. */
import { plants as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { DefinitionList, Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { FACT_GROUPS, type FactGroup } from './fact-order.ts';
import { FactSheet } from './fact-sheet.tsx';
import { useFactWords } from './fact-value.tsx';

const isSettable = (field: string): field is contracts.SettableFact =>
  contracts.SETTABLE_FACTS.some((each) => each === field);

export function Facts({ plant }: { plant: contracts.PlantPage }) {
  const { plants } = useMessages();
  const { page: say, facts: labels } = plants;
  const { mayBe, nursery } = useSession();
  const words = useFactWords();
  const regions = useQuery(trpc.plants.listRegions.queryOptions({}));
  const [changing, setChanging] = useState<contracts.SettableFact | 'any' | null>(null);
  const mayChange = mayBe(GROWERS);
  const known = new Map(plant.facts.map((fact) => [fact.field, fact]));
  // Regions are kept by code and read by name.
  const readable = ({ field, value }: contracts.PlantFactRow): contracts.PlantFactValue =>
    field === 'nativeRegions' && Array.isArray(value)
      ? value.map((code) => regions.data?.find((region) => region.code === code)?.name ?? String(code))
      : value;
  // Seeds are counted by the unit the nursery weighs in; the other one would only repeat it.
  const left = nursery.units === 'us' ? 'seedsPerGram' : 'seedsPerPound';
  const shownIn = (group: FactGroup) =>
    FACT_GROUPS[group].filter((field) => field !== left).flatMap((field) => known.get(field) ?? []);

  return (
    <Section title={say.facts} actions={mayChange && <Button onClick={() => setChanging('any')}>{say.setFact}</Button>}>
      {(Object.keys(FACT_GROUPS) as FactGroup[])
        .filter((group) => shownIn(group).length > 0)
        .map((group) => (
          <div key={group}>
            <h3>{say.factGroups[group]}</h3>
            <DefinitionList
              facts={shownIn(group).map((fact) => {
                const field = fact.field === 'seedsPerPound' ? 'seedsPerGram' : fact.field;
                const label = labels[fact.field as keyof typeof labels];
                return {
                  term: label,
                  value: (
                    <div className="fact-line">
                      <span className="fact-words">
                        {words(fact.field, readable(fact))}{' '}
                        <StandingMark standing={fact.standing} source={fact.source} />
                        {fact.note && <span className="fact-note">{fact.note}</span>}
                      </span>
                      {mayChange && isSettable(field) && (
                        <span className="fact-change">
                          <Button look="quiet" aria-label={say.changeFact(label)} onClick={() => setChanging(field)}>
                            {say.change}
                          </Button>
                        </span>
                      )}
                    </div>
                  ),
                };
              })}
            />
          </div>
        ))}
      {changing !== null && (
        <FactSheet plant={plant} field={changing === 'any' ? null : changing} onClose={() => setChanging(null)} />
      )}
    </Section>
  );
}
