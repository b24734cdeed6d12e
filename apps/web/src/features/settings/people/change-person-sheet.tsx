/** Another name or role, a new password, or an end. */
import { people as contracts } from '@rootclock/contracts';
import type { Role } from '@rootclock/domain';
import { queryClient, trpc, useSession } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { CheckboxField, TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { RoleField } from './role-field.tsx';
import { SecondStepOf } from './second-step-of.tsx';

interface Values {
  name: string;
  role: Role | '';
  ended: boolean;
  password: string;
}

export function ChangePersonSheet({ person, onClose }: { person: contracts.PersonRow; onClose: () => void }) {
  const { people: say } = useMessages().settings;
  const isOneself = useSession().person.id === person.id;
  const initial: Values = { name: person.name, role: person.role, ended: person.endedAt !== null, password: '' };
  const form = useCommandForm({
    command: useDirectCommand('people.changePerson'),
    contract: contracts.changePerson,
    initial,
    body: (values: Values) => ({ personId: person.id, ...values, password: values.password || null }),
    row: { id: 'personId', edition: person.edition },
    onSaved: (_, { name }) => {
      toast({ text: say.changed(name) });
      // A changed role may be one's own, and then the whole screen is another.
      void queryClient.invalidateQueries(trpc.people.pathFilter());
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.changeTitle(person.name)}>
      <Form {...form.props}>
        <TextField label={say.name} autoComplete="off" {...form.field('name')} />
        <RoleField {...form.field('role')} />
        <CheckboxField label={say.hasEnded} hint={say.endedHint} {...form.field('ended')} />
        {!isOneself && (
          <TextField
            label={say.newPassword}
            hint={say.newPasswordHint}
            optional
            type="password"
            autoComplete="new-password"
            {...form.field('password')}
          />
        )}
        <Submit form={form}>{say.save}</Submit>
      </Form>
      {!isOneself && <SecondStepOf person={person} />}
    </Sheet>
  );
}
