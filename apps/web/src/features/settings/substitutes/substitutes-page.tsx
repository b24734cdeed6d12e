/** The rules by which lines are offered alternatives, each in a sentence with its penalty and the word it stands on. */
import { useQuery } from '@tanstack/react-query';
import type { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { PlantsTabs } from '../../plants/plants-tabs.tsx';
import { AddSubstitutionSheet } from './add-substitution-sheet.tsx';
import { EditSubstitutionSheet } from './edit-substitution-sheet.tsx';
import { useSubstitutionWords } from './substitution-words.ts';
import '../../plants/plants.css';
import '../settings.css';

export function SubstitutesPage() {
  const { substitutes: say } = useMessages();
  const { mayBe } = useSession();
  const [changing, setChanging] = useState<orders.SubstitutionRuleRow | 'new' | null>(null);
  const close = () => setChanging(null);
  const add = mayBe(GROWERS) && (
    <Button look="primary" onClick={() => setChanging('new')}>
      {say.add}
    </Button>
  );
  return (
    <>
      <PageHeader title={say.title} actions={add} />
      <PlantsTabs />
      <p className="page-lead">{say.lead}</p>
      <Read query={useQuery(trpc.orders.listSubstitutionRules.queryOptions({}))}>
        {(rules) =>
          rules.length === 0 ? (
            <EmptyState kind="nothing-yet" title={say.emptyTitle}>
              {say.emptyText}
            </EmptyState>
          ) : (
            <Rules rules={rules} onChange={mayBe(GROWERS) ? setChanging : null} />
          )
        }
      </Read>
      {changing === 'new' && <AddSubstitutionSheet onClose={close} />}
      {changing !== null && changing !== 'new' && <EditSubstitutionSheet rule={changing} onClose={close} />}
    </>
  );
}

function Rules({
  rules,
  onChange,
}: {
  rules: readonly orders.SubstitutionRuleRow[];
  onChange: ((rule: orders.SubstitutionRuleRow) => void) | null;
}) {
  const { substitutes: say } = useMessages();
  const words = useSubstitutionWords();
  return (
    <ul className="rule-list">
      {rules.map((rule) => (
        <li key={rule.id} className="rule-item rule-line">
          <div className="rule-words">
            <strong>{words.who(rule)}.</strong> {say.sentences[rule.kind]} {say.penalty(rule.penalty)}.{' '}
            <StandingMark standing={rule.standing} />
            {rule.note && <span className="fact-note">{rule.note}</span>}
            <span className="fact-note">
              {[say.reaches(rule.plants), say.untoldPlants(rule.untoldPlants)].filter(Boolean).join(' ')}
            </span>
          </div>
          {onChange && (
            <Button look="quiet" aria-label={say.changeRule(words.name(rule))} onClick={() => onChange(rule)}>
              {say.change}
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}
