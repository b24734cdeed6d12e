/** The lists of gardens: orders, what is to be pulled, clients and kits; and where a change is tried. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function GardensTabs() {
  const { gardens } = useMessages();
  return (
    <PageTabs
      label={gardens.tabs}
      tabs={[
        { to: paths.gardens(), label: gardens.ordersTab, exact: true },
        { to: paths.toPull(), label: gardens.toPullTab },
        { to: paths.clients(), label: gardens.clientsTab },
        { to: paths.kits(), label: gardens.kits.tab },
        { to: paths.whatIf(), label: gardens.whatIf.tab },
      ]}
    />
  );
}
