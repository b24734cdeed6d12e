/** Where one is signed in: this device first, each other one to be ended. */
import type { people as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { queryClient, sentenceOf, trpc } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Badge, Callout, toast } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import './sessions.css';

export function SessionsSection() {
  const { sessions: say } = useMessages().door;
  const query = useQuery(trpc.people.listSessions.queryOptions());
  return (
    <Section title={say.title}>
      <Read query={query}>{(sessions) => <Sessions sessions={sessions} />}</Read>
    </Section>
  );
}

function Sessions({ sessions }: { sessions: contracts.SessionRow[] }) {
  const { sessions: say } = useMessages().door;
  const { dates } = useFormat();
  const one = useDirectCommand('people.endSession');
  const others = useDirectCommand('people.endOtherSessions');
  const failure = one.failure ?? others.failure;
  const busy = one.state === 'sending' || others.state === 'sending';
  const during = (work: Promise<unknown>, done: string) =>
    void work
      .then(
        () => toast({ text: done }),
        () => {
          // What was refused is in the command's failure and shown below.
        },
      )
      .finally(() => void queryClient.invalidateQueries(trpc.people.listSessions.queryFilter()));

  return (
    <div className="stack">
      <p>{sessions.length > 1 ? say.lead : say.only}</p>
      <ul className="session-list">
        {sessions.map(({ id, browser, system, openedAt, seenAt, here }) => {
          const device = say.device(browser, system);
          return (
            <li key={id} className="session">
              <div className="session-words">
                <p className="session-device">
                  {device} {here && <Badge shape="full">{say.here}</Badge>}
                </p>
                <p>{say.seen(dates.instant(seenAt))}</p>
                <p>{say.since(dates.instant(openedAt))}</p>
              </div>
              {!here && (
                <Button
                  busy={busy}
                  aria-label={say.endNamed(device)}
                  onClick={() => during(one.send({ sessionId: id }), say.ended)}
                >
                  {say.end}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      {failure && (
        <Callout tone="refusal" announce>
          {sentenceOf(failure)}
        </Callout>
      )}
      {sessions.length > 2 && (
        <div className="row">
          <Button look="danger" busy={busy} onClick={() => during(others.send({}), say.othersEnded)}>
            {say.endOthers}
          </Button>
        </div>
      )}
    </div>
  );
}
