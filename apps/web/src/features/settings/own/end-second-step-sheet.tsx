/** Turns the second step off, for whoever has both the password and a code. */
import { people as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../../lib/form/index.ts';
import { useDirectCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { TextField } from '../../../ui/fields/index.ts';
import { Form } from '../../../ui/form/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';

export function EndSecondStepSheet({ onClose }: { onClose: () => void }) {
  const { second: say } = useMessages().door;
  const form = useCommandForm({
    command: useDirectCommand('people.endSecondStep'),
    contract: contracts.endSecondStep,
    initial: { password: '', code: '' },
    body: (values) => values,
    onSaved: () => {
      toast({ text: say.isOff });
      onClose();
    },
  });
  return (
    <Sheet open onClose={onClose} title={say.turnOffTitle}>
      <Form {...form.props}>
        <TextField label={say.password} type="password" autoComplete="current-password" {...form.field('password')} />
        <TextField
          label={say.anyCode}
          autoComplete="one-time-code"
          autoCapitalize="characters"
          spellCheck={false}
          {...form.field('code')}
        />
        <Submit form={form} look="danger">
          {say.turnOff}
        </Submit>
      </Form>
    </Sheet>
  );
}
