/** Somebody new, with a first password that the owner tells them. */
import { people as contracts } from '@rootclock/contracts';
import type { Role } from '@rootclock/domain';
import { useState } from 'react';
import { queryClient, trpc } from '../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { RoleField } from './role-field.tsx';

interface Values {
  name: string;
  email: string;
  role: Role | '';
  password: string;
}

export function AddPersonSheet({ onClose }: { onClose: () => void }) {
  const { people: say } = useMessages().settings;
  const [personId] = useState(newId);
  const initial: Values = { name: '', email: '', role: 'crew', password: '' };
  const form = useCommandForm({
    command: useDirectCommand('people.addPerson'),
    contract: contracts.addPerson,
    initial,
    body: (values: Values) => ({ personId, ...values }),
    onSaved: (_, { name }) => {
      toast({ text: say.added(name) });
      void queryClient.invalidateQueries(trpc.people.listPeople.queryFilter());
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.addTitle}>
      <Form {...form.props}>
        <TextField label={say.name} autoComplete="off" {...form.field('name')} />
        <TextField
          label={say.email}
          type="email"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          {...form.field('email')}
        />
        <RoleField {...form.field('role')} />
        <TextField
          label={say.password}
          hint={say.passwordHint}
          type="password"
          autoComplete="new-password"
          {...form.field('password')}
        />
        <Submit form={form}>{say.save}</Submit>
      </Form>
    </Sheet>
  );
}
