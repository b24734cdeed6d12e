/** The views beside the list of plants: what they stand in and the rules they grow by. */
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function PlantsTabs() {
  const { tabs } = useMessages().plants;
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.plants(), label: tabs.plants, exact: true },
        { to: paths.containers(), label: tabs.containers },
        { to: paths.rules(), label: tabs.rules },
        { to: paths.windows(), label: tabs.windows },
        { to: paths.substitutes(), label: tabs.substitutes },
      ]}
    />
  );
}
