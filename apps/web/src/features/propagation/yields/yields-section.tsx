/** What the batch may yield: what somebody noted, and what the record suggests now, to be taken over with one tap. */
import { GROWERS, isUnitOnePlant } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { DefinitionList, Section } from '../../../ui/layout/index.ts';
import type { BatchPageData } from '../batch-page-data.ts';
import { SharesTable } from './shares-table.tsx';
import type { ForecastSuggestion } from './suggestion.ts';
import { useReverse } from '../use-reverse.ts';

export function YieldsSection({ batch }: { batch: BatchPageData }) {
  const { propagation } = useMessages();
  const { yields: say } = propagation;
  const { dates, numbers } = useFormat();
  const isOpen = batch.protocol !== null && batch.closedOn === null;
  const query = useQuery({
    ...trpc.propagation.suggestForecast.queryOptions({ batchId: batch.batchId }),
    enabled: isOpen,
  });
  return (
    <Section title={say.title}>
      <DefinitionList
        facts={[
          { term: say.cautious, value: batch.cautiousUnits === 0 ? say.notSaid : numbers.count(batch.cautiousUnits) },
          batch.usualUnits > 0 && { term: say.usual, value: numbers.count(batch.usualUnits) },
          batch.targetContainerName !== null && { term: propagation.form.target, value: batch.targetContainerName },
          batch.readyOn !== null && {
            term: say.ready,
            value: `${dates.long(batch.readyOn)}, ${dates.fromToday(batch.readyOn)}`,
          },
        ]}
      />
      {isOpen && (
        <Read query={query} lines={3}>
          {(suggestion) => <Suggested batch={batch} suggestion={suggestion} />}
        </Read>
      )}
    </Section>
  );
}

function Suggested({ batch, suggestion }: { batch: BatchPageData; suggestion: ForecastSuggestion }) {
  const { propagation } = useMessages();
  const { yields: say } = propagation;
  const { dates, numbers } = useFormat();
  const { mayBe } = useSession();
  const { readyOn, readyLateOn } = suggestion;
  if (suggestion.yield === null)
    return readyOn !== null && readyLateOn !== null ? (
      <p>{say.onlyReady(dates.short(readyOn), dates.short(readyLateOn))}</p>
    ) : null;
  const { cautiousUnits, usualUnits, tried, from } = suggestion.yield;
  const isStored =
    cautiousUnits === batch.cautiousUnits && usualUnits === batch.usualUnits && readyOn === batch.readyOn;
  const reckonedFrom =
    from === 'units' ? say.from.units(propagation.units(tried, batch.unit)) : say.from[from](numbers.count(tried));
  return (
    <Section title={say.suggested} level={3}>
      <p>
        <strong>{say.suggestion(cautiousUnits, usualUnits)}</strong>
        {readyOn !== null &&
          readyLateOn !== null &&
          `, ${say.suggestedReady(dates.short(readyOn), dates.short(readyLateOn))}`}
        .
      </p>
      <p>
        {reckonedFrom} {say.confidence(numbers.share(suggestion.confidence))}
      </p>
      <SharesTable stages={suggestion.stages} />
      {isStored ? (
        <p>{say.asStored}</p>
      ) : (
        mayBe(GROWERS) && (
          <TakeOver batch={batch} cautiousUnits={cautiousUnits} usualUnits={usualUnits} readyOn={readyOn} />
        )
      )}
    </Section>
  );
}

interface TakeOverProps {
  batch: BatchPageData;
  cautiousUnits: number;
  usualUnits: number;
  readyOn: string | null;
}

function TakeOver({ batch, cautiousUnits, usualUnits, readyOn }: TakeOverProps) {
  const { yields: say, sheet } = useMessages().propagation;
  const { today } = useSession();
  const reverse = useReverse();
  const command = useCommand('propagation.setBatchForecast', { title: `${sheet.forecastTitle}: ${batch.code}` });
  // The suggestion of a tray may be a moment older than a loss; where a unit is a plant, more than stand is never offered.
  const most = isUnitOnePlant(batch.unit) ? batch.standingUnits : Number.POSITIVE_INFINITY;
  const body = {
    batchId: batch.batchId,
    happenedOn: today,
    targetContainerId: batch.targetContainerId,
    cautiousUnits: Math.min(most, cautiousUnits),
    usualUnits: Math.min(most, usualUnits),
    readyOn,
    note: '',
  };
  const take = () => {
    command
      .send(body)
      .then(
        ({ entryId }) => toast({ text: say.taken(body.cautiousUnits, body.usualUnits), undo: () => reverse(entryId) }),
        tellRefused,
      );
  };
  return (
    <>
      <p>{say.offered}</p>
      <div className="row">
        <Button busy={command.state === 'sending'} onClick={take}>
          {say.takeOver}
        </Button>
      </div>
    </>
  );
}
