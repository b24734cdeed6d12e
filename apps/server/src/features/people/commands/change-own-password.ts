import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found, refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { requireNoKnownName } from '../passwords/judge.ts';
import { loadMembers, nameOfNursery, replaceOwnPassword } from '../store.ts';

/** A new password for whoever knows the present one. Both were hashed before, the present one against `knownHash`. */
export const changeOwnPassword = command({
  name: 'changeOwnPassword',
  input: z.strictObject({ password: z.string(), passwordHash: z.string(), knownHash: z.string() }),
  roles: EVERYONE,
  run: async (context, { password, passwordHash, knownHash }) => {
    const member = found(
      (await loadMembers(context)).find(({ id }) => id === context.personId),
      'person',
    );
    requireNoKnownName(password, { name: member.name, email: member.email, nurseryName: await nameOfNursery(context) });
    if (!(await replaceOwnPassword(context, knownHash, passwordHash)))
      refuse('wrong-password', undefined, 'currentPassword');
    context.touched.features.add('people');
    return { changed: true };
  },
});
