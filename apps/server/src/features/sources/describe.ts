import type { sources } from '@rootclock/contracts';
import { earliestOfDay } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { found, refuse } from '../../refusal.ts';
import type { CommandContext } from '../../trpc/operation.ts';
import { loadMotherLot, type SourceFields } from './store.ts';
import { describeSeed } from './stores/describe-seed.ts';

type Described = Omit<z.output<typeof sources.addSource>, 'plantId'>;

/** What was said of a source, as it is stored; refuses days to come and mother lots that cannot be its mother. */
export async function describeSource(
  context: CommandContext,
  input: Described,
  plant: { id: string; scientificName: string },
): Promise<SourceFields> {
  const gathered = input.gathered ? earliestOfDay(input.gathered) : null;
  if (gathered && gathered.earliestOn > context.today)
    refuse('day-in-future', { day: gathered.earliestOn, today: context.today }, 'gathered');
  if (input.kind === 'mother-plants' && !input.motherLotId) refuse('mother-lot-missing', undefined, 'motherLotId');
  if (input.motherLotId) {
    const mother = found(await loadMotherLot(context, input.motherLotId), 'lot', 'motherLotId');
    if (mother.plantId !== plant.id)
      refuse('source-of-other-plant', { source: mother.code, plant: plant.scientificName }, 'motherLotId');
    if (mother.sourceIds.includes(input.sourceId)) refuse('source-in-itself', { lot: mother.code }, 'motherLotId');
  }
  return {
    kind: input.kind,
    provenance: input.provenance,
    seedZone: input.seedZone ?? null,
    origin: input.origin,
    gatheredOn: gathered?.earliestOn ?? null,
    gatheredPrecision: gathered?.precision ?? null,
    collector: input.collector ?? null,
    permit: input.permit ?? null,
    vendor: input.vendor ?? null,
    vendorLot: input.vendorLot ?? null,
    pesticideStatement: input.pesticideStatement ?? null,
    motherLotId: input.motherLotId ?? null,
    note: input.note,
    ...describeSeed(context, input, gathered?.earliestOn ?? null),
  };
}

/** The year in a source's code: when it was gathered, else this one. */
export const yearOfSource = (gatheredOn: string | null, today: string): number =>
  Number((gatheredOn ?? today).slice(0, 4));
