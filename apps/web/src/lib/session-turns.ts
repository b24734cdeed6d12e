/**
 * Sessions change hands in this browser: whose it is now is told to the tab's parts (its outbox, its memory, its cache of reads) and to the
 * other tabs, which share the cookie. A tab that finds itself under another's session starts anew, so that nothing of one person is shown to the next.
 */
import { giveTabTo, onAnotherPerson, onSignedOut, queryClient, tabPerson } from './api/index.ts';
import { dayWatch, wakeWithDevice } from './clock/index.ts';
import { keptReads } from './kept-reads/index.ts';
import { outbox } from './outbox/index.ts';
import { rememberFor } from './remember.ts';
import { sayInstantsIn } from '../messages/days.ts';

/** Whose session the browser's cookie opens from now on; null for nobody's. */
interface Turn {
  personId: string | null;
}

const channel = new BroadcastChannel('rootclock-session');
const tell = (turn: Turn): void => channel.postMessage(turn);

/** A session as `people.me` tells of it. Called whenever that was read: it changes nothing when nothing has changed. */
export function enterSession({ person, nursery }: { person: { id: string }; nursery: { zone: string } }): void {
  sayInstantsIn(nursery.zone);
  dayWatch.keepZone(nursery.zone);
  if (tabPerson() === person.id) return;
  rememberFor(person.id);
  giveTabTo(person.id);
  keptReads.ownedBy(person.id, queryClient.getQueryCache().getAll());
  void outbox.signedInAs(person.id);
  tell({ personId: person.id });
}

/** Nobody is signed in here any more, or somebody else is about to be: what was read goes, what waits stays for its person. */
export function leaveSession(): void {
  giveTabTo(null);
  void outbox.signedInAs(null);
  keptReads.forget();
  queryClient.clear();
}

/** As `leaveSession`, once the server has ended the session for every tab. */
export function endSession(): void {
  leaveSession();
  tell({ personId: null });
}

const startAnew = (): void => window.location.reload();

/** Once, when the app starts. */
export function followSessions(): void {
  wakeWithDevice();
  // What was read is of the day on which it was read.
  dayWatch.whenDayTurns(() => void queryClient.invalidateQueries());
  // Also where no page of somebody signed in is open yet: a session that is over opens nothing any more.
  onSignedOut(() => keptReads.forget());
  onAnotherPerson(() => {
    keptReads.forget(tabPerson());
    startAnew();
  });
  channel.addEventListener('message', ({ data: { personId } }: MessageEvent<Turn>) => {
    const mine = tabPerson();
    if (mine === null) return;
    // Signed in again in another tab: what waited here goes out.
    if (personId === mine) void outbox.signedInAs(mine);
    else startAnew();
  });
}
