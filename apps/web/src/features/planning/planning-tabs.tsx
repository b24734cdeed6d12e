/** The views of planning: what to start, what is expected, and how supply stands against demand. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function PlanningTabs() {
  const { planning } = useMessages();
  return (
    <PageTabs
      label={planning.label}
      tabs={[
        { to: paths.planning(), label: planning.tabs.plan, exact: true },
        { to: paths.expectedDemand(), label: planning.tabs.demand },
        { to: paths.outlook(), label: planning.tabs.outlook },
      ]}
    />
  );
}
