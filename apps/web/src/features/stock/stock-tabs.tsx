/** The views of the stock, each with its own address; a view whose page is not there is not offered. */
import { useRouter } from '@tanstack/react-router';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

/** `takeIn` is the way of taking in that is in sight, since all of them stand under one tab. */
export function StockTabs({ takeIn = paths.opening() }: { takeIn?: string }) {
  const { tabs } = useMessages().stockIn;
  const { routesByPath } = useRouter();
  const all = [
    { to: paths.board(), label: tabs.board },
    { to: paths.lots(), label: tabs.table },
    { to: paths.places(), label: tabs.places },
    { to: paths.sources(), label: tabs.sources },
    { to: takeIn, label: tabs.takeIn },
  ];
  return <PageTabs label={tabs.label} tabs={all.filter((tab) => tab.to in routesByPath)} />;
}
