/** The pot-life rules, each in a sentence with the word it stands on. */
import { useQuery } from '@tanstack/react-query';
import type { potLife } from '@rootclock/contracts';
import { GROWERS, ROOT_HABITS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { FilterBar } from '../../../ui/table/index.ts';
import { PlantsTabs } from '../../plants/plants-tabs.tsx';
import { AddRuleSheet } from './add-rule-sheet.tsx';
import { EditRuleSheet } from './edit-rule-sheet.tsx';
import { OwnRule } from './own-rule.tsx';
import { RuleGroups } from './rule-groups.tsx';
import { useRuleWords } from './rule-words.ts';
import '../../plants/plants.css';

export function RulesPage() {
  const { rules: say, plants } = useMessages();
  const { mayBe } = useSession();
  const words = useRuleWords();
  const list = useListSearch({ sort: '', filters: ['q', 'roots'] });
  const [changing, setChanging] = useState<potLife.RuleRow | 'new' | null>(null);
  const query = useQuery(trpc.potLife.listRules.queryOptions({}));
  const habit = ROOT_HABITS.find((each) => each === list.filter('roots')) ?? '';
  const text = list.filter('q').toLowerCase();
  const isShown = (rule: potLife.RuleRow) =>
    (habit === '' || rule.rootHabit === habit) && words.whom(rule).toLowerCase().includes(text);
  const isFiltered = habit !== '' || text !== '';
  return (
    <>
      <PageHeader
        title={say.title}
        actions={
          mayBe(GROWERS) && (
            <Button look="primary" onClick={() => setChanging('new')}>
              {say.add}
            </Button>
          )
        }
      />
      <PlantsTabs />
      <p className="page-lead">{say.lead}</p>
      <FilterBar
        search={{ label: say.filterText, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          name="roots"
          label={say.filterHabit}
          optional="unsaid"
          empty={say.all}
          value={habit}
          onChange={(value) => list.setFilter('roots', value)}
          choices={ROOT_HABITS.map((value) => ({ value, label: plants.rootHabits[value] }))}
        />
      </FilterBar>
      <Read query={query}>
        {(rules) => {
          const shown = rules.filter(isShown);
          if (shown.length > 0)
            return <RuleGroups rules={shown} isOpen={isFiltered} onChange={mayBe(GROWERS) ? setChanging : null} />;
          return isFiltered ? (
            <EmptyState kind="nothing-matches" title={say.noMatchTitle} />
          ) : (
            <EmptyState kind="nothing-yet" title={say.emptyTitle}>
              {say.emptyText}
            </EmptyState>
          );
        }}
      </Read>
      {mayBe(GROWERS) && <OwnRule />}
      {changing === 'new' && <AddRuleSheet onClose={() => setChanging(null)} />}
      {changing !== null && changing !== 'new' && <EditRuleSheet rule={changing} onClose={() => setChanging(null)} />}
    </>
  );
}
