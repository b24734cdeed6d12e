/** The second step after the password: whether it is on, and the sheets that turn it on and off, loaded when they are asked for. */
import { OWNER } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, useState } from 'react';
import { queryClient, trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Skeleton } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { EndSecondStepSheet } from './end-second-step-sheet.tsx';

const BeginSecondStepSheet = lazy(async () => ({
  default: (await import('./begin-second-step-sheet.tsx')).BeginSecondStepSheet,
}));

export function SecondStepSection() {
  const { second: say } = useMessages().door;
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const [open, setOpen] = useState<'begin' | 'end' | null>(null);
  const query = useQuery(trpc.people.readSecondStep.queryOptions());
  // Whoever was an owner keeps the second step and may turn it off.
  if (!mayBe(OWNER) && !query.data?.since) return null;
  const close = () => {
    setOpen(null);
    void queryClient.invalidateQueries(trpc.people.readSecondStep.queryFilter());
  };
  return (
    <Section title={say.title}>
      <div className="stack">
        <p>{say.lead}</p>
        <Read query={query}>
          {({ since, codesLeft }) => (
            <>
              {since && (
                <p>
                  {say.on(dates.instant(since))} {say.codesLeft(codesLeft)}
                </p>
              )}
              <div className="row">
                {since ? (
                  <Button onClick={() => setOpen('end')}>{say.turnOff}</Button>
                ) : (
                  <Button onClick={() => setOpen('begin')}>{say.setUp}</Button>
                )}
              </div>
            </>
          )}
        </Read>
        {open === 'begin' && (
          <Suspense fallback={<Skeleton />}>
            <BeginSecondStepSheet onClose={close} />
          </Suspense>
        )}
        {open === 'end' && <EndSecondStepSheet onClose={close} />}
      </div>
    </Section>
  );
}
