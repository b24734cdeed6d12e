/**
 * Shell: the frame around every page of somebody signed in. A bar at the lower edge of a phone, a rail at the side of a wide screen;
 * the state of the line always in sight; the page takes focus when the route changes.
 */
import { Link, Outlet, useNavigate, useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';
import { onSignedOut, useSession } from '../lib/api/index.ts';
import { useLive } from '../lib/live/use-live.ts';
import { onParked } from '../lib/outbox/index.ts';
import { paths } from '../lib/paths.ts';
import { enterSession, leaveSession } from '../lib/session-turns.ts';
import { useMessages } from '../messages/index.ts';
import { toast } from '../ui/feedback/index.ts';
import { offered, type Destination } from '../routes/destinations.ts';
import { DestinationMark } from './destination-mark.tsx';
import { KeptNotice } from './kept-notice.tsx';
import { LineMark } from './line-mark.tsx';
import { PAGE_ID, useRouteFocus } from './route-focus.ts';
import { SignOutButton } from './sign-out-button.tsx';
import './shell.css';

function DestinationLink({ destination }: { destination: Destination }) {
  const { shell } = useMessages();
  return (
    <Link
      to={destination.to}
      className="destination"
      activeOptions={{ exact: destination.exact ?? false, includeSearch: false }}
    >
      <DestinationMark name={destination.key} />
      {shell[destination.key]}
    </Link>
  );
}

export function Shell() {
  const { shell } = useMessages();
  const { person, role, nursery } = useSession();
  const destinations = offered(useRouter().routesByPath);
  useLive();
  useRouteFocus();
  // Read again while the page stays open: an owner may move the nursery to another zone.
  useEffect(
    () => enterSession({ person: { id: person.id }, nursery: { zone: nursery.zone } }),
    [person.id, nursery.zone],
  );
  useOutboxNews();

  return (
    <div className="shell">
      <a href={`#${PAGE_ID}`} className="skip-link">
        {shell.skip}
      </a>
      <header className="shell-head">
        <Link to={paths.more()} className="shell-name">
          {nursery.name}
        </Link>
        {nursery.demo && <p className="shell-demo">{shell.demo}</p>}
        <LineMark personId={person.id} />
      </header>
      <nav className="shell-rail" aria-label={shell.destinations}>
        {destinations.map((destination) => (
          <DestinationLink key={destination.key} destination={destination} />
        ))}
        <Link to={paths.more()} className="destination">
          <DestinationMark name="more" />
          {shell.more}
        </Link>
        <div className="shell-person">
          <p>{shell.signedInAs(person.name, shell.roles[role])}</p>
          <SignOutButton />
        </div>
      </nav>
      <main id={PAGE_ID} className="shell-page" tabIndex={-1}>
        <KeptNotice />
        <Outlet />
      </main>
      <nav className="shell-bar" aria-label={shell.destinations}>
        {destinations
          .filter((destination) => destination.bar)
          .map((destination) => (
            <DestinationLink key={destination.key} destination={destination} />
          ))}
        <Link to={paths.more()} className="destination">
          <DestinationMark name="more" />
          {shell.more}
        </Link>
      </nav>
    </div>
  );
}

/** Tells of entries that were refused after their form was left, and leads to the door when the session is over. */
function useOutboxNews(): void {
  const { outbox: words } = useMessages();
  const navigate = useNavigate();
  useEffect(() => {
    onParked(() =>
      toast({
        tone: 'problem',
        text: words.parkedToast,
        action: { label: words.show, onAction: () => void navigate({ to: paths.outbox() }) },
      }),
    );
  }, [words, navigate]);
  useEffect(
    () =>
      onSignedOut(() => {
        const next = window.location.pathname + window.location.search;
        void navigate({ to: paths.signIn(), search: { next } }).then(leaveSession);
      }),
    [navigate],
  );
}
