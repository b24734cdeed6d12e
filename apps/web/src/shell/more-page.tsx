/** More: the destinations that have no room in the lower bar, the outbox, and how this screen looks and speaks. */
import { Link, useRouter } from '@tanstack/react-router';
import { useSession } from '../lib/api/index.ts';
import { paths } from '../lib/paths.ts';
import { useMessages } from '../messages/index.ts';
import { ButtonLink } from '../ui/action/index.ts';
import { PageHeader, Section } from '../ui/layout/index.ts';
import { offered } from '../routes/destinations.ts';
import { DestinationMark } from './destination-mark.tsx';
import { DisplayFields } from './display-fields.tsx';
import { SignOutButton } from './sign-out-button.tsx';

export function MorePage() {
  const { shell } = useMessages();
  const { person, role, nursery } = useSession();
  const others = offered(useRouter().routesByPath).filter((destination) => !destination.bar);
  return (
    <>
      <PageHeader title={shell.more} facts={shell.moreLead} />
      {others.length > 0 && (
        <ul className="more-list">
          {others.map((destination) => (
            <li key={destination.key}>
              <Link to={destination.to} className="more-item">
                <DestinationMark name={destination.key} />
                {shell[destination.key]}
              </Link>
            </li>
          ))}
        </ul>
      )}
      <Section title={shell.connection}>
        <div>
          <ButtonLink to={paths.outbox()}>{shell.openOutbox}</ButtonLink>
        </div>
      </Section>
      <Section title={shell.display}>
        <DisplayFields />
      </Section>
      <Section title={nursery.name}>
        <p>{shell.signedInAs(person.name, shell.roles[role])}</p>
        {nursery.demo && <p>{shell.demo}</p>}
        <div>
          <SignOutButton />
        </div>
      </Section>
    </>
  );
}
