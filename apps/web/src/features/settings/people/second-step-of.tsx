/** That a person is asked for codes, and the way out when they lost their phone. */
import type { people as contracts } from '@rootclock/contracts';
import { useQuery } from '@tanstack/react-query';
import { queryClient, sentenceOf, trpc } from '../../../lib/api/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Callout, toast } from '../../../ui/feedback/index.ts';

export function SecondStepOf({ person }: { person: contracts.PersonRow }) {
  const { second: say } = useMessages().door;
  const { data: withOne } = useQuery(trpc.people.listSecondSteps.queryOptions({}));
  const remove = useDirectCommand('people.removeSecondStep');
  if (!withOne?.includes(person.id)) return null;
  const removeIt = () =>
    void remove.send({ personId: person.id }).then(
      () => {
        toast({ text: say.removed(person.name) });
        void queryClient.invalidateQueries(trpc.people.listSecondSteps.queryFilter());
      },
      () => {
        // What was refused is in the command's failure and shown below.
      },
    );
  return (
    <div className="stack">
      <p>{say.ofPerson}</p>
      <div className="row">
        <Button look="danger" busy={remove.state === 'sending'} onClick={removeIt}>
          {say.remove}
        </Button>
      </div>
      {remove.failure && (
        <Callout tone="refusal" announce>
          {sentenceOf(remove.failure)}
        </Callout>
      )}
    </div>
  );
}
