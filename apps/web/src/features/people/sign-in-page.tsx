/** Signing in; a demo nursery offers its people at one tap. */
import { people as contracts } from '@rootclock/contracts';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { trpc } from '../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { useDirectCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Section } from '../../ui/layout/index.ts';
import { Door } from './door.tsx';
import { useEntering } from './entering.ts';

export function SignInPage() {
  const { people, shell } = useMessages();
  const { next }: { next?: string } = useSearch({ strict: false });
  const { data: setup } = useSuspenseQuery(trpc.people.setupState.queryOptions());
  const enter = useEntering();
  const form = useCommandForm({
    command: useDirectCommand('people.signIn'),
    contract: contracts.signIn,
    initial: { email: '', password: '', code: '' },
    body: ({ code, ...values }) => (code === '' ? values : { ...values, code }),
    onSaved: () => enter(next),
  });
  // Only who has the right password is asked for a code, so the field comes with the answer that asks for it.
  const asksForCode =
    form.values.code !== '' || form.failure?.code === 'second-step-needed' || form.failure?.code === 'wrong-code';
  return (
    <Door title={people.signInTitle} lead={people.signInLead}>
      {setup.demoSignIns.length > 0 && (
        <div className="door-demo">
          <Section title={people.demoTitle}>
            <p>{people.demoLead}</p>
            {setup.demoSignIns.map((person) => (
              <Button
                key={person.email}
                wide
                onClick={() => form.submit({ email: person.email, password: person.password, code: '' })}
              >
                {people.demoEnter(person.name, shell.roles[person.role])}
              </Button>
            ))}
          </Section>
        </div>
      )}
      <Form {...form.props}>
        <TextField
          label={people.email}
          type="email"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          {...form.field('email')}
        />
        <TextField
          label={people.password}
          type="password"
          autoComplete="current-password"
          {...form.field('password')}
        />
        {asksForCode && (
          <TextField
            label={people.code}
            autoComplete="one-time-code"
            autoCapitalize="characters"
            spellCheck={false}
            {...form.field('code')}
          />
        )}
        <Submit form={form}>{people.signIn}</Submit>
      </Form>
    </Door>
  );
}
