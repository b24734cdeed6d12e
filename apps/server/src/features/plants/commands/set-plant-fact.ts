import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { GRAMS_PER_POUND } from '../../../reference/index.ts';
import { editing } from '../../../trpc/editing.ts';
import { factEdits, loadPlant, type NewFact, putFacts } from '../store.ts';

/** One fact in the nursery's own words. What clocks reason with is changed by editing the plant, not here. */
export const setPlantFact = editing({
  name: 'setPlantFact',
  input: plants.setPlantFact,
  roles: GROWERS,
  edits: factEdits,
  run: async (context, { plantId, field, value, source = null, note = null }) => {
    await loadPlant(context, plantId);
    const fact: NewFact = { plantId, field, value, standing: 'own setting', source, note };
    await putFacts(context, [fact, ...(field === 'seedsPerGram' ? [perPound(fact)] : [])]);
    context.touched.features.add('plants');
    return { plantId, field };
  },
});

/** Seed counts are kept by the gram and by the pound; two that disagree would be worse than none. */
function perPound(perGram: NewFact): NewFact {
  const value = typeof perGram.value === 'number' ? Math.round(perGram.value * GRAMS_PER_POUND) : null;
  return {
    ...perGram,
    field: 'seedsPerPound',
    value,
    standing: 'derived',
    source: null,
    note: `converted from seeds per gram at ${GRAMS_PER_POUND} g a pound`,
  };
}
