/** The views of the settings. People are an owner's business, so others are not led there. */
import { OWNER } from '@rootclock/domain';
import { useSession } from '../../lib/api/index.ts';
import { paths } from '../../lib/paths.ts';
import { useMessages } from '../../messages/index.ts';
import { PageTabs } from '../../ui/layout/index.ts';

export function SettingsTabs() {
  const { tabs } = useMessages().settings;
  const { mayBe } = useSession();
  const people = { to: paths.people(), label: tabs.people };
  return (
    <PageTabs
      label={tabs.label}
      tabs={[
        { to: paths.settings(), label: tabs.nursery, exact: true },
        ...(mayBe(OWNER) ? [people] : []),
        { to: paths.ownSettings(), label: tabs.own },
      ]}
    />
  );
}
