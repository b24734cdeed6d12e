/** The views beside the list of batches: how plants are propagated, and what the record says came of it. */
import { useRouter } from '@tanstack/react-router';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

const RECORD = '/propagation/record';

export function PropagationTabs() {
  const { tabs } = useMessages().propagation.protocols;
  const { routesByPath } = useRouter();
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.propagation(), label: tabs.batches, exact: true },
        { to: paths.protocols(), label: tabs.protocols },
        ...(RECORD in routesByPath ? [{ to: RECORD, label: tabs.record }] : []),
      ]}
    />
  );
}
