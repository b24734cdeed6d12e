import { propagation } from '@rootclock/contracts';
import { batchAt, cellsOfTrays, containersForUnit, dateParts, FIELD, isUnitOnePlant, moved, outside, UNITS_FOR_METHOD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry, postMovements, requireSince } from '../../../stock/ledger/post.ts';
import { nextCodes } from '../../../stock/ledger/store.ts';
import { requireOpenPlaces } from '../../../stock/lots/places.ts';
import { settleBatch } from '../history/settle.ts';
import { type ContainerFacts, insertBatch, loadContainer, loadPlant, loadSource } from '../store.ts';

/** Units come from outside, never from a mother lot: giving cuttings or divisions takes nothing off it. A lot that is used up is converted instead. */
export const startBatch = command({
  name: 'startBatch',
  input: propagation.startBatch,
  roles: FIELD,
  run: async (context, input) => {
    const plant = await loadPlant(context, input.plantId);
    const source = await loadSource(context, input.sourceId);
    if (source.plantId !== plant.id) refuse('source-of-other-plant', { source: source.code, plant: source.plantName }, 'sourceId');
    if (source.isRetired) refuse('source-retired', { source: source.code }, 'sourceId');
    const fits = UNITS_FOR_METHOD[input.method];
    if (!fits.includes(input.unit)) refuse('unit-not-for-method', { unit: input.unit, method: input.method, fits: [...fits] }, 'unit');
    const container = input.containerId ? await loadContainer(context, input.containerId, 'containerId') : null;
    const kinds = containersForUnit(input.unit);
    if (!kinds.includes(container?.kind ?? null)) {
      refuse('container-not-for-unit', { unit: input.unit, container: container?.name ?? 'none', fits: kinds.map((kind) => kind ?? 'none') }, 'containerId');
    }
    if (input.targetContainerId) await loadContainer(context, input.targetContainerId, 'targetContainerId');
    await requireOpenPlaces(context, [input.placeId]);
    // Nobody sows what was not gathered yet; of a rough day the earliest possible counts.
    if (source.gatheredOn) requireSince(input.happenedOn, source.gatheredOn);
    const units = input.trays ? cellsIn(input.trays, container) : (input.units ?? 0);
    const forecast = { targetContainerId: input.targetContainerId ?? null, cautiousUnits: input.cautiousUnits, readyOn: input.readyOn ?? null };
    if (forecast.readyOn) requireSince(forecast.readyOn, input.happenedOn, 'readyOn');

    const [code = ''] = await nextCodes(context, plant.code, dateParts(input.happenedOn).year, 1);
    if (isUnitOnePlant(input.unit) && forecast.cautiousUnits > units) {
      refuse('cautious-over-units', { cautious: forecast.cautiousUnits, standing: units, unit: input.unit, batch: code }, 'cautiousUnits');
    }
    const entryId = await openEntry(context, {
      kind: 'start', happenedOn: input.happenedOn, note: input.note, subjects: [{ kind: 'batch', id: input.batchId }],
      details: { forecast, ...(input.trays ? { trays: input.trays } : {}) },
    });
    await insertBatch(context, entryId, {
      id: input.batchId, code, plantId: plant.id, sourceId: source.id, method: input.method, unit: input.unit, containerId: container?.id ?? null,
      startedOn: input.happenedOn, seedsSown: input.seedsSown ?? null, note: input.note,
    });
    await postMovements(context, entryId, [moved(units, outside('started'), batchAt(input.batchId, input.placeId))]);
    await settleBatch(context, input.batchId);
    return { entryId, code, units };
  },
});

function cellsIn(trays: number, container: ContainerFacts | null): number {
  if (container?.cells == null) refuse('tray-without-cells', { container: container?.name ?? 'none' }, 'trays');
  return cellsOfTrays(trays, container.cells);
}
