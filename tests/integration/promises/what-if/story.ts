import { randomUUID } from 'node:crypto';
import type { BodyOf } from '../../../../apps/server/src/trpc/operation.ts';
import type { whatIf } from '../../../../apps/server/src/features/promises/what-if/what-if.ts';
import { type GardenStory, gardenStory } from '../../../support/gardens.ts';
import { sent, type TestNursery } from '../../../support/nursery.ts';

export type Change = BodyOf<typeof whatIf>;
type Answer = Awaited<ReturnType<ReturnType<TestNursery['as']>['promises']['whatIf']>>;

/** Units by line and lot or batch. */
export type Held = Record<string, Record<string, number>>;

/** A nursery of which changes are tried and then really made, so that what was answered can be held against what happened. */
export async function whatIfStory(nursery: TestNursery) {
  const story: GardenStory = await gardenStory(nursery);
  const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });

  async function startBatch({
    units = 100,
    cautiousUnits = 60,
    readyOn = '2026-06-15' as string | null,
    plantId = story.plantId,
    sourceId = story.sourceId,
    placeId = story.placeId,
  } = {}) {
    const batchId = randomUUID();
    const { code } = await nursery.as('grower').propagation.startBatch(
      sent({
        batchId,
        plantId,
        sourceId,
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId: trayId,
        units,
        placeId,
        happenedOn: '2026-03-01',
        targetContainerId: story.containerId,
        cautiousUnits,
        readyOn,
      }),
    );
    return { batchId, code };
  }

  const ask = (change: Change) => nursery.as('viewer').promises.whatIf(change);

  /** All that is reserved in the nursery. */
  async function held(): Promise<Held> {
    const rows = await nursery.sql<{ line: string; supply: string; units: number }>(
      'SELECT line_id::text AS line, supply_id::text AS supply, sum(units)::int AS units FROM reservation WHERE nursery_id = $1 GROUP BY 1, 2',
      [nursery.nurseryId],
    );
    const all: Held = {};
    for (const { line, supply, units } of rows) (all[line] ??= {})[supply] = units;
    return all;
  }

  /** What would be reserved after a change, as the answer tells it. A line that was only tried goes by the id it really got. */
  function foretold(before: Held, answer: Answer, realLineId: string): Held {
    const all: Held = structuredClone(before);
    const shift = (lineId: string, supplyId: string, by: number) => {
      const line = (all[lineId] ??= {});
      line[supplyId] = (line[supplyId] ?? 0) + by;
      if (line[supplyId] === 0) delete line[supplyId];
      if (Object.keys(line).length === 0) delete all[lineId];
    };
    for (const line of answer.lines) {
      const lineId = line.standing === 'added' ? realLineId : line.lineId;
      for (const { supplyId, units } of line.givesUp) shift(lineId, supplyId, -units);
      for (const { supplyId, units } of line.takes) shift(lineId, supplyId, units);
    }
    return all;
  }

  /** Makes the change with the command that the screen would send, accepting what was said to become shorter, and answers a new line's id. */
  async function keep(change: Change, answer: Answer): Promise<string> {
    const { gardens, orders, promises, propagation, stock } = nursery.as('grower');
    const happenedOn = '2026-05-20';
    const lineId = change.kind === 'add-line' ? change.lineId : randomUUID();
    const acceptedShortages = answer.lines
      .filter(({ shorterBy }) => shorterBy > 0)
      .map((line) => ({ lineId: line.lineId, units: line.shorterBy }));
    if (change.kind === 'move-order')
      await nursery
        .as('owner')
        .promises.changeDay(
          sent({ orderId: change.orderId, dueOn: change.dueOn, keepRank: change.keepRank ?? false, acceptedShortages }),
        );
    if (change.kind === 'cancel-order')
      await gardens.cancelOrder(sent({ orderId: change.orderId, placeId: change.placeId ?? null, happenedOn }));
    if (change.kind === 'add-order') {
      const {
        plantId,
        containerId,
        units,
        dueOn,
        clientId,
        siteId = null,
        seedZone = null,
        wildType = false,
        untreated = false,
      } = change;
      const line = { lineId, plantId, containerId, units, seedZone, wildType, untreated };
      await orders.addOrder(
        sent({
          orderId: randomUUID(),
          clientId: clientId ?? story.clientId,
          siteId,
          kind: siteId === null ? ('pickup' as const) : ('installation' as const),
          dueOn,
          lines: [line],
        }),
      );
    }
    if (change.kind === 'lose-lot') {
      const { lotId } = change;
      const here = await nursery.sql<{ units: number }>(
        `SELECT coalesce(sum(units), 0)::int AS units FROM account WHERE lot_id = $1 AND kind = 'place' AND ($2::uuid IS NULL OR place_id = $2)`,
        [lotId, change.placeId ?? null],
      );
      await stock.loseFromLot(
        sent({
          lotId,
          units: change.units ?? here[0]?.units ?? 0,
          placeId: change.placeId ?? null,
          cause: 'weather' as const,
          happenedOn,
        }),
      );
    }
    if (change.kind === 'lose-batch') {
      const { standingUnits } = await propagation.readBatch({ batchId: change.batchId });
      await propagation.loseFromBatch(
        sent({
          batchId: change.batchId,
          units: change.units ?? standingUnits,
          placeId: change.placeId ?? null,
          cause: 'failed' as const,
          happenedOn,
        }),
      );
    }
    if (change.kind === 'change-batch') {
      const { batchId, cautiousUnits, readyOn = null } = change;
      await propagation.setBatchForecast(
        sent({ batchId, cautiousUnits, readyOn, targetContainerId: story.containerId, happenedOn }),
      );
    }
    if (change.kind === 'edit-line') {
      const { kind: _, ...line } = change;
      // Only the owner may let a line keep its turn at the cost of others.
      await nursery.as('owner').promises.editLine(sent({ ...line, acceptedShortages }));
    }
    if (change.kind === 'withdraw-line') await orders.withdrawLine(sent({ lineId: change.lineId }));
    if (change.kind === 'add-line') {
      const { kind: _, ...line } = change;
      await orders.addLine(sent(line));
    }
    if (change.kind === 'pin')
      await promises.pinReservation(
        sent({ lineId: change.lineId, supplyId: change.supplyId, units: change.units, acceptedShortages }),
      );
    if (change.kind === 'unpin')
      await promises.unpinReservation(sent({ lineId: change.lineId, supplyId: change.supplyId }));
    if (change.kind === 'release')
      await promises.releaseReservation(sent({ lineId: change.lineId, supplyId: change.supplyId }));
    if (change.kind === 'natives-only')
      await orders.editOrder(sent({ orderId: change.orderId, nativesOnly: change.nativesOnly ?? true }));
    return lineId;
  }

  /** Asks, makes the change, and answers what was told with what was reserved then in truth and by the answer. */
  async function askThenKeep(change: Change) {
    const before = await held();
    const answer = await ask(change);
    const lineId = await keep(change, answer);
    return { answer, lineId, really: await held(), told: foretold(before, answer, lineId) };
  }

  return { ...story, startBatch, ask, held, askThenKeep };
}
