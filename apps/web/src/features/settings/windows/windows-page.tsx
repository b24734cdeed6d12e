/** When plants go out, and by when what may not stand through winter must be out. */
import { useQuery } from '@tanstack/react-query';
import type { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { StandingMark } from '../../../ui/sign/index.ts';
import { PlantsTabs } from '../../plants/plants-tabs.tsx';
import { FreezeDay } from './freeze-day.tsx';
import { WindowSheet } from './window-sheet.tsx';
import { useWindowWords } from './window-words.ts';
import { YearStrip, type StripRow } from './year-strip.tsx';
import '../../plants/plants.css';

export function WindowsPage() {
  const { windows: say } = useMessages().rules;
  const { mayBe } = useSession();
  const [changing, setChanging] = useState<potLife.WindowRow | 'new' | null>(null);
  const query = useQuery(trpc.potLife.listWindows.queryOptions({}));
  return (
    <>
      <PageHeader
        title={say.title}
        actions={
          mayBe(GROWERS) && (
            <Button look="primary" onClick={() => setChanging('new')}>
              {say.add}
            </Button>
          )
        }
      />
      <PlantsTabs />
      <p className="page-lead">{say.lead}</p>
      <Read query={query}>{(list) => <Windows list={list} onChange={mayBe(GROWERS) ? setChanging : null} />}</Read>
      {changing !== null && (
        <WindowSheet window={changing === 'new' ? null : changing} onClose={() => setChanging(null)} />
      )}
    </>
  );
}

/** Windows for the same plants share a row. */
function rowsOf(windows: readonly potLife.WindowRow[], label: (window: potLife.WindowRow) => string): StripRow[] {
  const rows = new Map<string, { key: string; label: string; windows: potLife.WindowRow[] }>();
  for (const window of windows) {
    const key = label(window);
    const row = rows.get(key) ?? { key, label: key, windows: [] };
    row.windows.push(window);
    rows.set(key, row);
  }
  return [...rows.values()];
}

function Windows({
  list,
  onChange,
}: {
  list: potLife.WindowList;
  onChange: ((window: potLife.WindowRow) => void) | null;
}) {
  const { windows: say } = useMessages().rules;
  const { today } = useSession();
  const { dates } = useFormat();
  const words = useWindowWords();
  return (
    <>
      <Section title={say.title}>
        <YearStrip rows={rowsOf(list.windows, words.whom)} freezeMd={list.freezeMd} today={today} />
        {list.windows.length === 0 && (
          <EmptyState kind="nothing-yet" title={say.emptyTitle}>
            {say.emptyText}
          </EmptyState>
        )}
        <ul className="window-list">
          {list.windows.map((window) => (
            <li key={window.id} className="rule-item rule-line">
              <div className="rule-words">
                <strong>{words.range(window)}</strong>, {words.whom(window)}
                {window.closesMd < window.opensMd && `, ${say.wraps}`}.{' '}
                <StandingMark standing={window.standing} source={window.source} />
                {window.note && <span className="fact-note">{window.note}</span>}
              </div>
              {onChange && (
                <Button
                  look="quiet"
                  aria-label={say.changeNamed(`${words.range(window)}, ${words.whom(window)}`)}
                  onClick={() => onChange(window)}
                >
                  {say.change}
                </Button>
              )}
            </li>
          ))}
        </ul>
      </Section>
      <Section title={say.freezeTitle} aside={dates.yearly(list.freezeMd)}>
        <p>
          {say.freezeLead} <StandingMark standing={list.freezeStanding} />
        </p>
        {onChange && <FreezeDay key={list.freezeMd} freezeMd={list.freezeMd} edition={list.edition} />}
      </Section>
    </>
  );
}
