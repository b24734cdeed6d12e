import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { found, refuse } from '../../../refusal.ts';
import { editing } from '../../../trpc/editing.ts';
import { passwordHash } from '../sign-in.ts';
import { changeMember, loadMembers, personEdits } from '../store.ts';

/** Another name or role, an end or a return, a new password. A nursery is never left without an owner. */
export const changePerson = editing({
  name: 'changePerson',
  input: people.changePerson,
  roles: OWNER,
  edits: personEdits,
  run: async (context, { personId, name, role, ended, password }) => {
    const members = await loadMembers(context);
    const member = found(members.find(({ id }) => id === personId), 'person', 'personId');
    const isOwnerLeft = members.some((other) => other.id !== personId && other.role === 'owner' && other.endedAt === null);
    if (!isOwnerLeft && (role !== 'owner' || ended)) refuse('last-owner', undefined, ended ? 'ended' : 'role');
    const endsAt = ended ? (member.endedAt === null ? context.now : new Date(member.endedAt)) : null;
    await changeMember(context, { id: personId, name, role, endsAt, passwordHash: password ? await passwordHash(password) : null });
    context.touched.features.add('people');
    return { personId };
  },
});
