/** One's own calendar address: made, shown once, copied, ended. It goes straight to the server and is kept nowhere on the device. */
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryClient, sentenceOf, trpc } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useLanguage, useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Callout, toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Section } from '../../../ui/layout/index.ts';

export function CalendarSection() {
  const { calendar: say } = useMessages().tasks;
  const query = useQuery(trpc.people.readCalendarAddress.queryOptions());
  return (
    <Section title={say.title}>
      <div className="stack">
        <p>{say.text}</p>
        <Callout tone="caution">{say.warning}</Callout>
        <Read query={query}>{({ openedAt }) => <Address openedAt={openedAt} />}</Read>
      </div>
    </Section>
  );
}

function Address({ openedAt }: { openedAt: string | null }) {
  const { calendar: say } = useMessages().tasks;
  const { dates } = useFormat();
  const language = useLanguage();
  const [address, setAddress] = useState<string | null>(null);
  const make = useDirectCommand('people.createCalendarAddress');
  const end = useDirectCommand('people.revokeCalendarAddress');
  const failure = make.failure ?? end.failure;
  const readAgain = () => void queryClient.invalidateQueries(trpc.people.readCalendarAddress.queryFilter());

  const makeOne = async () => {
    end.reset();
    const { path, origin } = await make.send({});
    // A phone outside needs the public address, by whichever one this page was opened.
    setAddress(`${origin ?? window.location.origin}${path}${language === 'en' ? '' : `?language=${language}`}`);
    readAgain();
  };
  const endIt = async () => {
    make.reset();
    await end.send({});
    setAddress(null);
    toast({ text: say.revoked });
    readAgain();
  };
  const during = (work: Promise<void>) =>
    void work.catch(() => {
      // What was refused is in the command's failure and shown below.
    });

  return (
    <>
      {address ? <Shown address={address} /> : <p>{openedAt ? say.since(dates.instant(openedAt)) : say.none}</p>}
      {failure && (
        <Callout tone="refusal" announce>
          {sentenceOf(failure)}
        </Callout>
      )}
      <div className="row">
        <Button look={openedAt ? 'plain' : 'primary'} busy={make.state === 'sending'} onClick={() => during(makeOne())}>
          {openedAt ? say.makeAnew : say.make}
        </Button>
        {openedAt && (
          <Button look="danger" busy={end.state === 'sending'} onClick={() => during(endIt())}>
            {say.revoke}
          </Button>
        )}
      </div>
      {openedAt && <p>{say.makeAnewHint}</p>}
    </>
  );
}

function Shown({ address }: { address: string }) {
  const { calendar: say } = useMessages().tasks;
  const copy = () => {
    // Only safe origins have a clipboard; a nursery's own server on the local net may be none.
    const copied = navigator.clipboard
      ? navigator.clipboard.writeText(address)
      : Promise.reject(new Error('no clipboard'));
    copied.then(
      () => toast({ text: say.copied }),
      () => toast({ tone: 'problem', text: say.copyFailed }),
    );
  };
  return (
    <div className="stack" role="status">
      <TextField
        name="calendarAddress"
        label={say.address}
        hint={say.made}
        optional="unsaid"
        readOnly
        value={address}
        onChange={() => {}}
      />
      <div className="row">
        <Button look="primary" onClick={copy}>
          {say.copy}
        </Button>
      </div>
      <p>{say.how}</p>
    </div>
  );
}
