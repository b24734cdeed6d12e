/** The views of the stock, each with its own address. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function StockTabs() {
  const { tabs } = useMessages().stockIn;
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.board(), label: tabs.board },
        { to: paths.lots(), label: tabs.table },
        { to: paths.places(), label: tabs.places },
        { to: paths.sources(), label: tabs.sources },
        { to: paths.opening(), label: tabs.takeIn },
      ]}
    />
  );
}
