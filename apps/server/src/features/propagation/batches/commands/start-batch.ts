import { propagation } from '@rootclock/contracts';
import {
  batchAt,
  cellsOfTrays,
  containersForUnit,
  dateParts,
  FIELD,
  moved,
  outside,
  UNITS_FOR_METHOD,
} from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { useSeed } from '../../../sources/stores/use-seed.ts';
import { openEntry, postMovements, requirePast, requireSince } from '../../../stock/ledger/post.ts';
import { nextCodes } from '../../../stock/ledger/store.ts';
import { requireOpenPlaces } from '../../../stock/lots/places.ts';
import { insertBatch } from '../../../stock/store.ts';
import { settleBatch } from '../history/settle.ts';
import { forecastFor } from '../starting/expected.ts';
import { drawPacks, loadPacks } from '../starting/from-packs.ts';
import { setUp } from '../starting/under-protocol.ts';
import { type ContainerFacts, loadContainer, loadPlant, loadSource } from '../store.ts';

/**
 * Units come from outside, never from a mother lot: giving cuttings or divisions takes nothing off it. A lot that is used up is converted instead.
 * Seed that stands in packs already is drawn from their batch, so that it is traced to them and not booked twice.
 */
export const startBatch = command({
  name: 'startBatch',
  input: propagation.startBatch,
  roles: FIELD,
  run: async (context, input) => {
    const plant = await loadPlant(context, input.plantId);
    const source = await loadSource(context, input.sourceId);
    if (source.plantId !== plant.id)
      refuse('source-of-other-plant', { source: source.code, plant: source.plantName }, 'sourceId');
    if (source.isRetired) refuse('source-retired', { source: source.code }, 'sourceId');
    const { versionId, unit, stagePosition, ...setup } = await setUp(context, input, plant);
    const fits = UNITS_FOR_METHOD[input.method];
    if (!fits.includes(unit)) refuse('unit-not-for-method', { unit, method: input.method, fits: [...fits] }, 'unit');
    const container = setup.containerId ? await loadContainer(context, setup.containerId, 'containerId') : null;
    const kinds = containersForUnit(unit);
    if (!kinds.includes(container?.kind ?? null)) {
      refuse(
        'container-not-for-unit',
        { unit, container: container?.name ?? 'none', fits: kinds.map((kind) => kind ?? 'none') },
        'containerId',
      );
    }
    if (setup.targetContainerId) await loadContainer(context, setup.targetContainerId, 'targetContainerId');
    await requireOpenPlaces(context, [input.placeId]);
    requirePast(context, input.happenedOn);
    // Nobody sows what was not gathered yet; of a rough day the earliest possible counts.
    if (source.gatheredOn) requireSince(input.happenedOn, source.gatheredOn);
    const packs = input.fromPacks
      ? await loadPacks(context, input.fromPacks, { plant, source, happenedOn: input.happenedOn })
      : null;
    const units = input.trays ? cellsIn(input.trays, unit, container) : (input.units ?? 0);

    const [code = ''] = await nextCodes(context, plant.code, dateParts(input.happenedOn).year, 1);
    const forecast = forecastFor(
      { code, unit, startedOn: input.happenedOn, standing: units },
      { ...input, targetContainerId: setup.targetContainerId },
    );
    const entryId = await openEntry(context, {
      kind: packs ? 'convert' : 'start',
      happenedOn: input.happenedOn,
      note: input.note,
      subjects: [{ kind: 'batch', id: input.batchId }],
      details: {
        forecast,
        ...(stagePosition === null ? {} : { stage: { position: stagePosition } }),
        ...(input.trays ? { trays: input.trays } : {}),
        ...(packs && input.fromPacks
          ? {
              fromPacks: {
                batchId: packs.id,
                units: input.fromPacks.units,
                seeds: input.seedsSown ?? null,
                grams: input.seedGrams ?? null,
              },
            }
          : {}),
      },
    });
    await insertBatch(context, entryId, {
      id: input.batchId,
      code,
      plantId: plant.id,
      sourceId: source.id,
      method: input.method,
      unit,
      containerId: container?.id ?? null,
      startedOn: input.happenedOn,
      seedsSown: input.seedsSown ?? null,
      seedsGrams: input.seedGrams ?? null,
      protocolVersionId: versionId,
      parentBatchId: packs?.id ?? null,
      note: input.note,
    });
    await postMovements(
      context,
      entryId,
      packs && input.fromPacks
        ? drawPacks(packs, input.fromPacks, { batchId: input.batchId, placeId: input.placeId, units })
        : [moved(units, outside('started'), batchAt(input.batchId, input.placeId))],
    );
    // What is in packs left the store when they were started.
    if (input.seedGrams && !packs)
      await useSeed(context, {
        sourceId: source.id,
        grams: input.seedGrams,
        happenedOn: input.happenedOn,
        batchId: input.batchId,
        entryId,
      });
    await settleBatch(context, input.batchId);
    if (packs) await settleBatch(context, packs.id);
    return { entryId, code, units };
  },
});

function cellsIn(trays: number, unit: string, container: ContainerFacts | null): number {
  if (unit !== 'cell') refuse('invalid-input', { issues: [{ path: 'trays', problem: 'not-a-choice' }] }, 'trays');
  if (container?.cells == null) refuse('tray-without-cells', { container: container?.name ?? 'none' }, 'trays');
  return cellsOfTrays(trays, container.cells);
}
