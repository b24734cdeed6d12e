/** Rules under their container, folded away: its summary says the limits, so that most questions need no opening. */
import type { potLife } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { groupRules, type RuleGroup } from './groups.ts';
import { useRuleWords } from './rule-words.ts';
import '../settings.css';

interface RuleGroupsProps {
  rules: readonly potLife.RuleRow[];
  isOpen: boolean;
  /** Null for whoever may only look. */
  onChange: ((rule: potLife.RuleRow) => void) | null;
}

export function RuleGroups({ rules, isOpen, onChange }: RuleGroupsProps) {
  const { rules: say } = useMessages();
  const groups = groupRules(rules);
  const general = groups.filter((group) => group.containerId === null);
  const byContainer = groups.filter((group) => group.containerId !== null);
  return (
    <>
      {general.map((group) => (
        <Section key="general" title={say.general}>
          <RuleList rules={group.rules} onChange={onChange} />
        </Section>
      ))}
      {byContainer.length > 0 && (
        <Section title={say.byContainer}>
          <p>{say.noSource}</p>
          {byContainer.map((group) => (
            <ContainerRules key={group.containerId} group={group} isOpen={isOpen} onChange={onChange} />
          ))}
        </Section>
      )}
    </>
  );
}

function ContainerRules({
  group,
  isOpen,
  onChange,
}: {
  group: RuleGroup;
  isOpen: boolean;
  onChange: RuleGroupsProps['onChange'];
}) {
  const { short } = useRuleWords();
  const limits = [...new Set(group.rules.map(short))];
  return (
    <details className="fold" open={isOpen || undefined}>
      <summary className="fold-summary">
        <span className="fold-title">{group.containerName}</span>
        <span className="fold-gist">{limits.join('; ')}</span>
      </summary>
      <RuleList rules={group.rules} onChange={onChange} />
    </details>
  );
}

function RuleList({ rules, onChange }: Pick<RuleGroupsProps, 'rules' | 'onChange'>) {
  const { rules: say } = useMessages();
  const { who, whom, sentence } = useRuleWords();
  return (
    <ul className="rule-list">
      {rules.map((rule) => (
        <li key={rule.id} className="rule-item rule-line">
          <div className="rule-words">
            <strong>{who(rule)}.</strong> {sentence(rule)}{' '}
            <StandingMark standing={rule.standing} source={rule.source} />
            {rule.note && <span className="fact-note">{rule.note}</span>}
            <span className="fact-note">{say.binds(rule.binds)}</span>
          </div>
          {onChange && (
            <Button look="quiet" aria-label={say.changeRule(whom(rule))} onClick={() => onChange(rule)}>
              {say.change}
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}
