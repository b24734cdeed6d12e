/** Ends the session. Entries that still wait stay on the device for the next sign-in, and the button says so. */
import { useNavigate } from '@tanstack/react-router';
import { useSession } from '../lib/api/index.ts';
import { useDirectCommand, useOutbox } from '../lib/outbox/index.ts';
import { paths } from '../lib/paths.ts';
import { endSession } from '../lib/session-turns.ts';
import { useMessages } from '../messages/index.ts';
import { Button } from '../ui/action/index.ts';

export function SignOutButton() {
  const { shell, outbox: outboxWords } = useMessages();
  const { person } = useSession();
  const { waiting } = useOutbox(person.id);
  const signOut = useDirectCommand('people.signOut');
  const navigate = useNavigate();
  const leave = async () => {
    try {
      await signOut.send({});
    } catch {
      return;
    }
    await navigate({ to: paths.signIn() });
    endSession();
  };
  return (
    <>
      <Button busy={signOut.state === 'sending'} onClick={() => void leave()}>
        {shell.signOut}
      </Button>
      {waiting.length > 0 && <p>{shell.signOutWaiting}</p>}
      {signOut.failure && <p role="alert">{outboxWords.noAnswer}</p>}
    </>
  );
}
