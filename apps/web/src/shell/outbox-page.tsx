/** The outbox: what still waits, and what was refused after its form was left, with everything that was typed. */
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { sentenceOf, useSession } from '../lib/api/index.ts';
import { useFormat } from '../lib/format/index.ts';
import { startMending, useOnline, useOutbox, type Entry } from '../lib/outbox/index.ts';
import { useMessages } from '../messages/index.ts';
import { Button } from '../ui/action/index.ts';
import { Callout, EmptyState } from '../ui/feedback/index.ts';
import { DefinitionList, PageHeader, Panel, Section } from '../ui/layout/index.ts';
import { ConfirmAgain } from '../ui/overlay/index.ts';
import { nameOf, typedFacts } from './entry-words.ts';

export function OutboxPage() {
  const { outbox: words } = useMessages();
  const { person } = useSession();
  const box = useOutbox(person.id);
  const online = useOnline();
  const [discarding, setDiscarding] = useState<Entry | null>(null);
  const isEmpty = box.isKnown && box.waiting.length === 0 && box.parked.length === 0;
  return (
    <>
      <PageHeader title={words.title} facts={words.lead} />
      <div className="stack">
        {!online && <Callout tone="note">{words.offline}</Callout>}
        {!box.lasting && <Callout tone="caution">{words.notLasting}</Callout>}
        {box.others > 0 && <Callout tone="note">{words.somebodyElse(box.others)}</Callout>}
        {isEmpty && (
          <EmptyState kind="all-done" title={words.allSent}>
            {words.allSentText}
          </EmptyState>
        )}
      </div>
      {box.parked.length > 0 && (
        <Section title={words.attentionTitle} aside={box.parked.length}>
          {box.parked.map((entry) => (
            <ParkedEntry
              key={entry.id}
              entry={entry}
              onSendAgain={() => box.sendAgain(entry.id)}
              onDiscard={() => setDiscarding(entry)}
            />
          ))}
        </Section>
      )}
      {box.waiting.length > 0 && (
        <Section title={words.waitingTitle} aside={box.waiting.length}>
          {box.waiting.map((entry) => (
            <Panel key={entry.id}>
              <EntryFacts
                entry={entry}
                state={box.sendingIds.includes(entry.id) ? words.sending : words.tries(entry.tries)}
              />
            </Panel>
          ))}
        </Section>
      )}
      <ConfirmAgain
        open={discarding !== null}
        title={words.discardTitle}
        confirm={words.discardConfirm}
        onClose={() => setDiscarding(null)}
        onConfirm={() => {
          if (discarding) box.discard(discarding.id);
          setDiscarding(null);
        }}
      >
        {words.discardText}
      </ConfirmAgain>
    </>
  );
}

function EntryFacts({ entry, state }: { entry: Entry; state?: string }) {
  const { outbox: words } = useMessages();
  const { dates } = useFormat();
  return (
    <>
      <h3>{nameOf(entry)}</h3>
      <p>
        {words.enteredAt}{' '}
        <time dateTime={new Date(entry.enteredAt).toISOString()}>
          {dates.instant(new Date(entry.enteredAt).toISOString())}
        </time>
        {state && ` · ${state}`}
      </p>
      <DefinitionList facts={typedFacts(entry.body)} />
    </>
  );
}

function ParkedEntry({
  entry,
  onSendAgain,
  onDiscard,
}: {
  entry: Entry;
  onSendAgain: () => void;
  onDiscard: () => void;
}) {
  const { outbox: words } = useMessages();
  const navigate = useNavigate();
  const refused = entry.parked?.kind === 'refused' ? entry.parked.failure : null;
  return (
    <Panel>
      <div className="stack">
        <EntryFacts entry={entry} />
        <Callout tone="refusal">{refused ? sentenceOf(refused) : words.dependsOnOther}</Callout>
        <div className="row">
          {refused && (
            <Button
              look="primary"
              onClick={() => {
                startMending(entry.id);
                void navigate({ to: entry.from });
              }}
            >
              {words.mend}
            </Button>
          )}
          <Button onClick={onSendAgain}>{words.sendAgain}</Button>
          <Button look="danger" onClick={onDiscard}>
            {words.discard}
          </Button>
        </div>
      </div>
    </Panel>
  );
}
