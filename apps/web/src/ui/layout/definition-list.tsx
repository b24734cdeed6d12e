/** DefinitionList: facts as term and value, in the order given. A fact without a value is left out, never shown as a dash. */
import type { ReactNode } from 'react';
import './definition-list.css';

export interface Fact {
  term: string;
  value: ReactNode;
  /** Says where the value comes from, such as a StandingMark. */
  mark?: ReactNode;
}

export interface DefinitionListProps {
  facts: readonly (Fact | false | null | undefined)[];
}

const isKnown = (fact: Fact | false | null | undefined): fact is Fact =>
  Boolean(fact) &&
  typeof fact === 'object' &&
  fact !== null &&
  fact.value !== null &&
  fact.value !== undefined &&
  fact.value !== '';

export function DefinitionList({ facts }: DefinitionListProps) {
  return (
    <dl className="facts">
      {facts.filter(isKnown).map((fact) => (
        <div key={fact.term} className="fact">
          <dt>{fact.term}</dt>
          <dd>
            {fact.value} {fact.mark}
          </dd>
        </div>
      ))}
    </dl>
  );
}
