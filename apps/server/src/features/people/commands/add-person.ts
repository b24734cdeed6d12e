import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { passwordHash } from '../sign-in.ts';
import { addMember } from '../store.ts';

/** Somebody new, with a first password that the owner tells them. One address is one person on the whole server. */
export const addPerson = command({
  name: 'addPerson',
  input: people.addPerson,
  roles: OWNER,
  run: async (context, { personId, name, email, role, password }) => {
    const added = await addMember(context, { id: personId, name, email, role, passwordHash: await passwordHash(password) });
    if (!added) refuse('email-taken', { email }, 'email');
    context.touched.features.add('people');
    return { personId };
  },
});
