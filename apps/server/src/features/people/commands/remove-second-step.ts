import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { found, refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { removeStepOf } from '../second-step/store.ts';

/** For somebody whose phone is lost: their password alone lets them in again, until they set a new second step up. */
export const removeSecondStep = command({
  name: 'removeSecondStep',
  input: people.removeSecondStep,
  roles: OWNER,
  run: async (context, { personId }) => {
    // One's own is turned off with the password and a code: an unlocked phone of an owner must not be enough.
    if (personId === context.personId) refuse('own-second-step', undefined, 'personId');
    found((await removeStepOf(context.tx, personId)) || null, 'person', 'personId');
    context.touched.features.add('people');
    return { personId };
  },
});
