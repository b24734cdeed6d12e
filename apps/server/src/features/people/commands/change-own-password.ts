import { verify } from '@node-rs/argon2';
import { people } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { found, refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { passwordHash } from '../sign-in.ts';
import { changeMember, findPerson, loadMembers } from '../store.ts';

/** A new password for whoever knows the present one: an unlocked phone alone must not be enough. */
export const changeOwnPassword = command({
  name: 'changeOwnPassword',
  input: people.changeOwnPassword,
  roles: EVERYONE,
  run: async (context, { currentPassword, password }) => {
    const member = found((await loadMembers(context)).find(({ id }) => id === context.personId), 'person');
    const stored = found(await findPerson(context.tx, member.email), 'person');
    if (!(await verify(stored.passwordHash, currentPassword))) refuse('wrong-password', undefined, 'currentPassword');
    await changeMember(context, { id: member.id, name: member.name, role: member.role, endsAt: null, passwordHash: await passwordHash(password) });
    context.touched.features.add('people');
    return { changed: true };
  },
});
