/** RoleField: what a person may do, each role with what it means. */
import { ROLES, type Role } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { RadioField } from '../../../ui/fields/index.ts';

export function RoleField({
  name,
  value,
  onChange,
}: {
  name: string;
  value: Role | '';
  onChange: (role: Role) => void;
}) {
  const { settings, shell } = useMessages();
  const { people: say } = settings;
  return (
    <RadioField
      label={say.role}
      name={name}
      value={value}
      onChange={onChange}
      choices={ROLES.map((role) => ({ value: role, label: shell.roles[role], hint: say.roleHints[role] }))}
    />
  );
}
