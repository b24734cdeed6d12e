/** The two ways to take plants in, and the sentence for those whose role allows neither. */
import { sentenceOf } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageTabs } from '../../../ui/layout/index.ts';

export function IntakeTabs() {
  const { tabs } = useMessages().stockIn.intake;
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.opening(), label: tabs.opening },
        { to: paths.receive(), label: tabs.bought },
      ]}
    />
  );
}

export function NotYours() {
  const { shell } = useMessages();
  return (
    <EmptyState kind="failed" title={shell.noAccessTitle}>
      {sentenceOf({ code: 'not-allowed', class: 'access' })}
    </EmptyState>
  );
}
