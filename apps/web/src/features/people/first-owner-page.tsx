/** The first visit to a server without a nursery: its first owner names it. */
import { people as contracts } from '@rootclock/contracts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { useDirectCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { SelectField, TextField } from '../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../ui/form/index.ts';
import { Door } from './door.tsx';
import { useEntering } from './entering.ts';

const zones = Intl.supportedValuesOf('timeZone');
const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
/** The device's own zone may carry a name that the list does not know. */
const choices = (zones.includes(here) ? zones : [here, ...zones]).map((zone) => ({
  value: zone,
  label: zone.replaceAll('_', ' '),
}));

export function FirstOwnerPage() {
  const { people } = useMessages();
  const enter = useEntering();
  const form = useCommandForm({
    command: useDirectCommand('people.createFirstOwner'),
    contract: contracts.createFirstOwner,
    initial: { nurseryName: '', zone: here, name: '', email: '', password: '' },
    body: (values) => values,
    onSaved: () => enter(),
  });
  return (
    <Door title={people.firstTitle} lead={people.firstLead}>
      <Form {...form.props}>
        <FieldGroup legend={people.nursery}>
          <TextField label={people.nurseryName} autoComplete="organization" {...form.field('nurseryName')} />
          <SelectField label={people.zone} hint={people.zoneHint} choices={choices} {...form.field('zone')} />
        </FieldGroup>
        <FieldGroup legend={people.you}>
          <TextField label={people.name} autoComplete="name" {...form.field('name')} />
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
            hint={people.passwordHint}
            type="password"
            autoComplete="new-password"
            {...form.field('password')}
          />
        </FieldGroup>
        <Submit form={form}>{people.begin}</Submit>
      </Form>
    </Door>
  );
}
