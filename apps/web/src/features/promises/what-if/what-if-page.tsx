/** Trying a change without making it: it is typed, what would come of it is shown, and then it is kept or dropped. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { promises as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { fieldSentences, issuesIn, readFailure, sentenceOf, trpc, type Failure } from '../../../lib/api/index.ts';
import { ReadFailed } from '../../../lib/read/index.ts';
import { useRested } from '../../../lib/use-rested.ts';
import { useMessages } from '../../../messages/index.ts';
import { EmptyState, Skeleton, toast } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { GardensTabs } from '../../orders/gardens-tabs.tsx';
import { ChangeFields } from './change-fields.tsx';
import { Difference } from './difference/difference.tsx';
import { KeepOrDrop } from './keep/keep-or-drop.tsx';
import { useAskedChange } from './use-asked-change.ts';
import { forKind, NOTHING, readChange, type WhatIfChange, type WhatIfValues } from './what-if-values.ts';
import './what-if.css';

export function WhatIfPage() {
  const asked = useAskedChange();
  return asked.isLoading ? <Skeleton /> : <Trying initial={asked.values} />;
}

function Trying({ initial }: { initial: WhatIfValues }) {
  const { promises } = useMessages();
  const words = promises.whatIf;
  const [values, setValues] = useState(initial);
  const read = readChange(values);
  const typed = read.ok ? JSON.stringify(read.data) : '';
  const asked = useRested(typed);
  const change = asked === '' ? null : (JSON.parse(asked) as WhatIfChange);
  const query = useQuery({
    ...trpc.promises.whatIf.queryOptions(change ?? NEVER),
    enabled: change !== null,
    placeholderData: keepPreviousData,
  });

  const refused = change && query.isError ? readFailure(query.error) : null;
  const wrong = read.ok
    ? null
    : filledInWrong({ code: 'invalid-input', class: 'input', data: { issues: read.issues } });
  const errors = wrong ? fieldSentences(wrong) : refused ? fieldSentences(refused) : {};
  const problem =
    refused && Object.keys(errors).length === 0 && refused.class !== 'retry' && refused.class !== 'fault'
      ? sentenceOf(refused)
      : undefined;
  const isCurrent = query.data !== undefined && !query.isError && !query.isPlaceholderData && asked === typed;

  const outcome = () => {
    if (change === null || typed === '')
      return (
        <EmptyState kind="nothing-yet" title={words.nothingTried}>
          {words.nothingTriedText}
        </EmptyState>
      );
    if (refused)
      return problem === undefined && Object.keys(errors).length === 0 ? (
        <ReadFailed error={query.error} onRetry={() => void query.refetch()} />
      ) : null;
    return query.data ? <Difference answer={query.data} /> : <Skeleton />;
  };
  return (
    <>
      <PageHeader title={words.title} facts={words.lead} />
      <GardensTabs />
      <Section title={words.changeTitle}>
        <Form errors={errors} problem={problem} onSubmit={() => void query.refetch()}>
          <SelectField
            name="kind"
            label={words.kind}
            value={values.kind}
            onChange={(kind) => setValues(forKind(values, kind))}
            choices={contracts.WHAT_IF_KINDS.map((kind) => ({ value: kind, label: words.kinds[kind] }))}
          />
          <ChangeFields
            key={values.kind}
            values={values}
            onChange={(part) => setValues((before) => ({ ...before, ...part }))}
          />
        </Form>
      </Section>
      <Section title={words.differenceTitle}>
        <div aria-live="polite" aria-busy={query.isFetching}>
          {outcome()}
        </div>
      </Section>
      {change && isCurrent && (
        <KeepOrDrop
          key={asked}
          change={change}
          answer={query.data}
          values={values}
          onDrop={() => {
            setValues(NOTHING);
            toast({ text: words.dropped });
          }}
        />
      )}
    </>
  );
}

/** Stands in for a change while there is none; it is never sent. */
const NEVER: WhatIfChange = { kind: 'cancel-order', orderId: '', placeId: null };

/** What is still empty is no mistake as long as somebody is typing. */
function filledInWrong(failure: Failure): Failure | null {
  const issues = issuesIn(failure).filter(
    ({ problem, path }) => problem !== 'required' && path !== 'kind' && path !== '',
  );
  return issues.length > 0 ? { ...failure, data: { issues } } : null;
}
