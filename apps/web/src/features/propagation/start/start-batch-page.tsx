/** The page that starts a batch. What its address asks for, as the plan's links do, is filled in before the form is shown. */
import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { trpc } from '../../../lib/api/index.ts';
import { useEntryDay } from '../../../lib/entry-day.ts';
import { paths } from '../../../lib/paths.ts';
import { isText, useRemembered } from '../../../lib/remember.ts';
import { useMessages } from '../../../messages/index.ts';
import { Skeleton } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { readAsk } from './start-ask.ts';
import { startFilled } from './start-filled.ts';
import { StartForm } from './start-form.tsx';

export function StartBatchPage() {
  const { propagation } = useMessages();
  const search: Record<string, unknown> = useSearch({ strict: false });
  const [ask] = useState(() => readAsk(search));
  const [place, keepPlace] = useRemembered('propagation.place', '', isText);
  const { day, today, keepDay } = useEntryDay('propagation');
  const isAsked = ask.plantId !== undefined;
  const choices = useQuery({
    ...trpc.propagation.readStartChoices.queryOptions({
      plantId: ask.plantId ?? '',
      versionId: ask.protocolVersionId ?? null,
    }),
    enabled: isAsked,
  });
  const containers = useQuery({ ...trpc.plants.listContainers.queryOptions({}), enabled: isAsked });
  // A plant that is gone by now is simply not filled in.
  const isLoading = isAsked && (choices.isLoading || containers.isLoading);
  return (
    <div className="stack">
      <PageHeader title={propagation.form.title} back={{ to: paths.propagation(), label: propagation.title }} />
      {isLoading ? (
        <Skeleton />
      ) : (
        <StartForm
          initial={startFilled({
            ask,
            choices: choices.data ?? null,
            containers: containers.data ?? [],
            place,
            day,
            today,
          })}
          askedVersionId={ask.protocolVersionId ?? null}
          onStarted={(placeId, startedOn) => {
            keepPlace(placeId);
            keepDay(startedOn);
          }}
        />
      )}
    </div>
  );
}
