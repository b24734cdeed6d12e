import { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { IANAZone } from 'luxon';
import { refuse } from '../../../refusal.ts';
import { editing } from '../../../trpc/editing.ts';
import { nurseryEdits, updateNursery } from '../store.ts';

export const editNursery = editing({
  name: 'editNursery',
  input: people.editNursery,
  roles: OWNER,
  edits: nurseryEdits,
  run: async (context, settings) => {
    if (!IANAZone.isValidZone(settings.zone)) refuse('unknown-zone', { zone: settings.zone }, 'zone');
    await updateNursery(context, settings);
    // The end of the season decides what counts as declining, and so what is promised first.
    context.touched.allPromises = true;
    context.touched.features.add('people').add('promises').add('stock');
    return { name: settings.name };
  },
});
