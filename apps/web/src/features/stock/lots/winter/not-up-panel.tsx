/** NotUpPanel: plants that a spring count found not yet up, waited for or asked about. Shows nothing where there are none. */
import { useQuery } from '@tanstack/react-query';
import { FIELD } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button, TextLink } from '../../../../ui/action/index.ts';
import { Badge } from '../../../../ui/feedback/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { SpringSheet } from './spring-sheet.tsx';
import './winter.css';

export interface NotUpPanelProps {
  /** Those of a place and of what lies in it; with a lot, its own only. */
  placeId?: string;
  lotId?: string;
}

export function NotUpPanel({ placeId, lotId }: NotUpPanelProps) {
  const { winter: say } = useMessages();
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const [counting, setCounting] = useState<{ lotId: string; code: string } | null>(null);
  const { data = [] } = useQuery(trpc.stock.listNotUp.queryOptions({ ...(placeId ? { placeId } : {}), waiting: true }));
  const rows = data.filter((row) => !lotId || row.lotId === lotId);
  if (rows.length === 0) return null;
  return (
    <Section title={say.notUpTitle}>
      <ul className="not-up">
        {rows.map((row) => (
          <li key={`${row.lotId}/${row.placeId}`} className="not-up-row">
            <p>
              <span className="figure">{say.notUpLine(row.notUpUnits, row.standingUnits)}</span>{' '}
              {lotId ? (
                row.placeCode
              ) : (
                <>
                  <TextLink to={paths.lot(row.lotId)}>{row.code}</TextLink> <i lang="la">{row.scientificName}</i>,{' '}
                  {row.placeCode}
                </>
              )}
            </p>
            <p>
              <Badge shape={row.isAsked ? 'over' : 'hatched'}>{say.notUp}</Badge>{' '}
              {row.isAsked ? say.asks(dates.long(row.untilOn)) : say.waits(dates.long(row.untilOn))}
            </p>
            {mayBe(FIELD) && (
              <Button onClick={() => setCounting({ lotId: row.lotId, code: row.code })}>{say.answer}</Button>
            )}
          </li>
        ))}
      </ul>
      {counting && <SpringSheet lotId={counting.lotId} name={counting.code} onClose={() => setCounting(null)} />}
    </Section>
  );
}
