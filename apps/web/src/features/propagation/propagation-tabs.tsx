/** The views beside the list of batches: how plants are propagated, and what the record says came of it. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function PropagationTabs() {
  const { tabs } = useMessages().propagation.protocols;
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.propagation(), label: tabs.batches, exact: true },
        { to: paths.protocols(), label: tabs.protocols },
        { to: paths.record(), label: tabs.record },
      ]}
    />
  );
}
