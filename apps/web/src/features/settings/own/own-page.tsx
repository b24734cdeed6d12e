/** One's own password, and how this device looks and speaks. */
import { people as contracts } from '@rootclock/contracts';
import { queryClient, trpc, useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { DisplayFields } from '../../../shell/display-fields.tsx';
import { toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { CalendarSection } from './calendar-section.tsx';
import { SecondStepSection } from './second-step-section.tsx';
import { SessionsSection } from './sessions-section.tsx';
import { SettingsTabs } from '../settings-tabs.tsx';

const EMPTY = { currentPassword: '', password: '' };

export function OwnPage() {
  const { settings, shell } = useMessages();
  const { own: say } = settings;
  const { person, role } = useSession();
  const form = useCommandForm({
    command: useDirectCommand('people.changeOwnPassword'),
    contract: contracts.changeOwnPassword,
    initial: EMPTY,
    body: (values) => values,
    onSaved: () => {
      toast({ text: say.changed });
      form.restart(EMPTY);
      void queryClient.invalidateQueries(trpc.people.me.queryFilter());
      void queryClient.invalidateQueries(trpc.people.listSessions.queryFilter());
    },
  });
  return (
    <>
      <PageHeader title={settings.title} facts={shell.signedInAs(person.name, shell.roles[role])} />
      <SettingsTabs />
      <Section title={say.passwordTitle}>
        <Form {...form.props}>
          <input
            type="email"
            className="only-heard"
            autoComplete="username"
            value={person.email}
            readOnly
            tabIndex={-1}
            aria-hidden="true"
          />
          <TextField
            label={say.current}
            type="password"
            autoComplete="current-password"
            {...form.field('currentPassword')}
          />
          <TextField
            label={say.next}
            hint={say.nextHint}
            type="password"
            autoComplete="new-password"
            {...form.field('password')}
          />
          <Submit form={form}>{say.save}</Submit>
        </Form>
      </Section>
      <SecondStepSection />
      <SessionsSection />
      <CalendarSection />
      <Section title={say.display}>
        <DisplayFields />
      </Section>
    </>
  );
}
