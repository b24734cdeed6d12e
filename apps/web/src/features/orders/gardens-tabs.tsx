/** The lists of gardens: orders, what is to be pulled, clients and kits; and where a change is tried. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function GardensTabs() {
  const { orders, promises } = useMessages();
  return (
    <PageTabs
      label={orders.tabs}
      tabs={[
        { to: paths.gardens(), label: orders.ordersTab, exact: true },
        { to: paths.toPull(), label: orders.toPullTab },
        { to: paths.clients(), label: orders.clientsTab },
        { to: paths.kits(), label: orders.kits.tab },
        { to: paths.whatIf(), label: promises.whatIf.tab },
      ]}
    />
  );
}
