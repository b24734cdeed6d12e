import { propagation } from '@rootclock/contracts';
import {
  batchAt,
  dateParts,
  earliestOfDay,
  FIELD,
  type FirstAlive,
  firstAliveOf,
  isUnitOnePlant,
  lotAt,
  type MovementDraft,
  notBeforeStart,
  pottedClocks,
  startsWithFirstAlive,
} from '@rootclock/domain';
import type * as z from 'zod/mini';
import { refuse } from '../../../../refusal.ts';
import { type CommandContext, command } from '../../../../trpc/operation.ts';
import { openEntry, postMovements, requirePast, requireSince } from '../../../stock/ledger/post.ts';
import { nextCodes } from '../../../stock/ledger/store.ts';
import { drawFromLot } from '../../../stock/lots/draw.ts';
import { inheritHolds } from '../../../stock/lots/holding-store.ts';
import { requireOpenPlaces } from '../../../stock/lots/open-places.ts';
import { insertLots, type NewLot } from '../../../stock/lots/store.ts';
import { settleBatch } from '../history/settle.ts';
import { loadBatchEntries } from '../history/store.ts';
import { loadOpenBatch } from '../open.ts';
import { lotToPotInto } from '../potting.ts';
import { type BatchFacts, loadContainer } from '../store.ts';

type Input = z.output<typeof propagation.potBatch>;
type Potting = Input['lots'][number];

/** Both sides are counted: units out of the batch, plants into the lots. They may differ, since a cell can hold two plants or none. */
export const potBatch = command({
  name: 'potBatch',
  input: propagation.potBatch,
  roles: FIELD,
  run: async (context, input) => {
    requirePast(context, input.happenedOn);
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    const said = saidFirstAlive(input, batch);
    const known = firstAliveOf(await loadBatchEntries(context, batch.id));
    const firstAlive = said && (!known || said.on < known.on) ? said : known;
    if (!firstAlive && startsWithFirstAlive(batch))
      refuse('first-alive-unknown', { batch: batch.code, startedOn: batch.startedOn }, 'firstAlive');

    const lots: NewLot[] = [];
    for (const [index, potting] of input.lots.entries()) {
      if (potting.into === 'existing') await lotToPotInto(context, batch, potting, input.happenedOn, `lots.${index}`);
      else lots.push(await newLot(context, batch, potting, firstAlive, input.happenedOn, `lots.${index}`));
    }
    for (const [index, potting] of input.lots.entries())
      await requireOpenPlaces(context, [potting.placeId], `lots.${index}.placeId`);
    const movements = drawAll(batch, input.lots);
    const codes = await nextCodes(context, batch.plantCode, dateParts(input.happenedOn).year, lots.length);
    for (const [index, lot] of lots.entries()) lot.code = codes[index] ?? '';

    const entryId = await openEntry(context, {
      kind: 'pot',
      happenedOn: input.happenedOn,
      note: input.note,
      subjects: [{ kind: 'batch', id: batch.id }],
      details: said ? { firstAlive: said } : {},
    });
    await insertLots(context, entryId, lots);
    await postMovements(context, entryId, movements);
    await inheritHolds(context, entryId);
    await settleBatch(context, batch.id);
    return { entryId, lots: lots.map(({ id, code }) => ({ lotId: id, code })) };
  },
});

/** A day somebody remembers may be only a month or a season: its earliest day counts, and is marked as assumed. */
function saidFirstAlive(input: Input, batch: BatchFacts): FirstAlive | null {
  if (!input.firstAlive) return null;
  const { earliestOn, latestOn, precision } = earliestOfDay(input.firstAlive, 'firstAlive');
  requireSince(latestOn, batch.startedOn, 'firstAlive');
  const on = notBeforeStart(earliestOn, batch.startedOn);
  if (on > input.happenedOn) refuse('day-in-future', { day: on, today: input.happenedOn }, 'firstAlive');
  return { on, assumed: precision !== 'day' };
}

async function newLot(
  context: CommandContext,
  batch: BatchFacts,
  potting: Potting,
  firstAlive: FirstAlive | null,
  on: string,
  path: string,
): Promise<NewLot> {
  if (!potting.containerId)
    refuse('invalid-input', { issues: [{ path: `${path}.containerId`, problem: 'required' }] }, `${path}.containerId`);
  const container = await loadContainer(context, potting.containerId, `${path}.containerId`);
  if (potting.readyOn) requireSince(potting.readyOn, on, `${path}.readyOn`);
  const clocks = pottedClocks(batch, firstAlive, container.kind, on);
  // Promises made from the batch follow its plants into the container they were meant for, so the day they expect goes along.
  const expectedOn = container.id === batch.targetContainerId ? batch.readyOn : null;
  return {
    id: potting.lotId,
    code: '',
    plantId: batch.plantId,
    sourceId: batch.sourceId,
    containerId: container.id,
    pottedOn: on,
    confinedOn: clocks.confinedOn,
    confinedStanding: clocks.assumed ? 'assumed' : 'recorded',
    containerOn: clocks.containerOn,
    readyOn: potting.readyOn ?? expectedOn,
  };
}

/** Takes each lot's units in turn from what the ones before left. */
function drawAll(batch: BatchFacts, pottings: readonly Potting[]): MovementDraft[] {
  const balances = batch.balances.map((balance) => ({ ...balance }));
  return pottings.flatMap((potting, index) => {
    const path = `lots.${index}.unitsOut`;
    const live = balances.filter((balance) => balance.units > 0);
    const into = lotAt(potting.lotId, potting.placeId);
    if (potting.unitsOut === 0) {
      if (isUnitOnePlant(batch.unit)) refuse('units-must-leave', { unit: batch.unit, batch: batch.code }, path);
      const from = live.find((balance) => !potting.fromPlaceId || balance.placeId === potting.fromPlaceId) ?? live[0];
      if (!from) refuse('nothing-left', { batch: batch.code }, path);
      return [{ from: batchAt(batch.id, from.placeId), to: into, fromUnits: 0, toUnits: potting.pottedUnits }];
    }
    const drawn = drawFromLot({ code: batch.code, balances: live }, potting.unitsOut, potting.fromPlaceId, path);
    return drawn.map(({ placeId, units }, at) => {
      const balance = balances.find((here) => here.placeId === placeId);
      if (balance) balance.units -= units;
      // Where a lot is filled from several places its plants are booked once, with the first of them.
      return {
        from: batchAt(batch.id, placeId),
        to: into,
        fromUnits: units,
        toUnits: at === 0 ? potting.pottedUnits : 0,
      };
    });
  });
}
