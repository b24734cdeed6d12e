import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import { commandPrepared } from '../../../trpc/operation.ts';
import { passwordHash } from '../passwords/hashing.ts';
import { requireNoKnownName, requireUncommon } from '../passwords/judge.ts';
import { addMember, nameOfNursery } from '../store.ts';

/** Somebody new, with a first password that the owner tells them. One address is one person on the whole server. */
export const addPerson = commandPrepared({
  name: 'addPerson',
  input: people.addPerson,
  roles: OWNER,
  before: async (body) => {
    await requireUncommon(body.password);
    return { ...body, passwordHash: await passwordHash(body.password) };
  },
  run: async (context, { personId, name, email, role, password, passwordHash: hash }) => {
    requireNoKnownName(password, { name, email, nurseryName: await nameOfNursery(context) });
    const added = await addMember(context, { id: personId, name, email, role, passwordHash: hash });
    if (!added) refuse('email-taken', { email }, 'email');
    context.touched.features.add('people');
    return { personId };
  },
});
