import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { found, refuse } from '../../../refusal.ts';
import { editingPrepared } from '../../../trpc/editing.ts';
import { passwordHash } from '../passwords/hashing.ts';
import { requireNoKnownName, requireUncommon } from '../passwords/judge.ts';
import { changeMember, loadMembers, nameOfNursery, personEdits } from '../store.ts';

/** Another name or role, an end or a return, a new password. A nursery is never left without an owner. */
export const changePerson = editingPrepared({
  name: 'changePerson',
  input: people.changePerson,
  roles: OWNER,
  edits: personEdits,
  before: async ({ password }) => {
    if (!password) return null;
    await requireUncommon(password);
    return passwordHash(password);
  },
  run: async (context, { personId, name, role, ended, password }, hash) => {
    const members = await loadMembers(context);
    const member = found(
      members.find(({ id }) => id === personId),
      'person',
      'personId',
    );
    const isOwnerLeft = members.some(
      (other) => other.id !== personId && other.role === 'owner' && other.endedAt === null,
    );
    if (!isOwnerLeft && (role !== 'owner' || ended)) refuse('last-owner', undefined, ended ? 'ended' : 'role');
    // One's own is changed where the present one is asked for: an unlocked phone of an owner must not be enough.
    if (password && personId === context.personId) refuse('own-password', undefined, 'password');
    if (password)
      requireNoKnownName(password, { name, email: member.email, nurseryName: await nameOfNursery(context) });
    const endsAt = ended ? (member.endedAt === null ? context.now : new Date(member.endedAt)) : null;
    await changeMember(context, { id: personId, name, role, endsAt, passwordHash: hash });
    context.touched.features.add('people');
    return { personId };
  },
});
