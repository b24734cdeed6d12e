import { randomUUID } from 'node:crypto';
import { sent, type TestNursery } from '../nursery.ts';
import { samplePhoto } from '../pictures.ts';
import { stockOf } from '../stock.ts';
import { addSampleGrounds } from './grounds.ts';
import { sampleContent } from './protocols.ts';

/**
 * The rows that sample bodies name, by what they are good for. Every word a person wrote in them carries the nursery's `mark`, so that an
 * answer which shows any of it to another nursery is found.
 */
export type SampleRows = Awaited<ReturnType<typeof addSampleRows>>;

/** One nursery with something of everything, standing so that each command has something it can be done to. */
export async function addSampleRows(nursery: Pick<TestNursery, 'nurseryId' | 'sql' | 'as' | 'people'>, mark: string) {
  const { nurseryId, sql, as } = nursery;
  const stock = stockOf(nursery);
  const today = '2026-05-20';
  const id = randomUUID;

  const grounds = await addSampleGrounds(nursery, mark);
  const { plantId, containerId, trayId, groundId, placeId, otherPlaceId, nurseryBedId, sourceId } = grounds;

  const seedSourceId = await stock.addSource(plantId, { kind: 'seed-collection' });
  const secondSeedSourceId = await stock.addSource(plantId, { kind: 'bought-seed' });
  const blendId = id();
  const testId = id();

  const lot = { plantId, containerId, sourceId, placeId };
  const lotId = await stock.addLot(lot);
  const twinLotId = await stock.addLot(lot);
  const heldLotId = await stock.addLot({ ...lot, placeId: otherPlaceId });
  const bedLotId = await stock.addLot({ ...lot, containerId: groundId, placeId: nurseryBedId });
  // Lots get their codes from the factory; these are what a person would read.
  await sql(`UPDATE lot SET code = $2 || code WHERE nursery_id = $1`, [nurseryId, mark]);
  const [{ entryId } = { entryId: '' }] = await sql<{ entryId: string }>(
    'SELECT created_entry_id::text AS "entryId" FROM lot WHERE nursery_id = $1 AND id = $2',
    [nurseryId, twinLotId],
  );

  const rows = {
    ruleId: id(),
    substitutionRuleId: id(),
    kitId: id(),
    windowId: id(),
    nameId: id(),
    clientId: id(),
    idleClientId: id(),
    siteId: id(),
    bedId: id(),
    batchId: id(),
    batchLotId: id(),
    packsId: id(),
    orderId: id(),
    lineId: id(),
    demandId: id(),
    pinnedLineId: id(),
    stagedOrderId: id(),
    stagedLineId: id(),
    protocolId: id(),
    versionId: id(),
    retiredProtocolId: id(),
    attachmentId: id(),
  };
  const owner = as('owner');
  const day = { opensMd: '04-15', closesMd: '06-15', maxContainerMl: null, region: null, note: mark };
  await owner.potLife.addWindow(sent({ windowId: rows.windowId, ...day }));
  await owner.potLife.addRule(
    sent({
      ruleId: rows.ruleId,
      basis: 'confined' as const,
      reach: { plantId },
      span: 'P1Y',
      winterCarry: null,
      note: mark,
    }),
  );
  await owner.plants.addPlantName(
    sent({ nameId: rows.nameId, plantId, kind: 'common' as const, name: `${mark} weed` }),
  );
  await owner.clients.addClient(sent({ clientId: rows.clientId, name: `${mark} client`, note: mark }));
  await owner.clients.addClient(sent({ clientId: rows.idleClientId, name: `${mark} other client` }));
  await owner.clients.addSite(
    sent({ siteId: rows.siteId, clientId: rows.clientId, name: `${mark} site`, address: mark }),
  );
  await owner.clients.addBed(sent({ bedId: rows.bedId, siteId: rows.siteId, name: `${mark} bed` }));
  await owner.orders.addSubstitutionRule(
    sent({ ruleId: rows.substitutionRuleId, kind: 'another-size' as const, reach: {}, penalty: 2, note: mark }),
  );
  await owner.orders.addKit(
    sent({ kitId: rows.kitId, name: `${mark} kit`, note: mark, components: [{ plantId, containerId, units: 2 }] }),
  );
  await owner.stock.holdMany(
    sent({ lotIds: [heldLotId], reason: 'quarantine' as const, happenedOn: today, note: mark }),
  );

  const cleaned = { kind: 'cleaned' as const, happenedOn: today, note: mark };
  const { movementId } = await owner.sources.receiveSeed(sent({ sourceId: seedSourceId, grams: 20, ...cleaned }));
  await owner.sources.receiveSeed(sent({ sourceId: seedSourceId, grams: 25, ...cleaned }));
  await owner.sources.receiveSeed(sent({ sourceId: secondSeedSourceId, grams: 10, ...cleaned }));
  await owner.sources.blendSources(
    sent({
      sourceId: blendId,
      parts: [
        { sourceId: seedSourceId, grams: 3 },
        { sourceId: secondSeedSourceId, grams: 2 },
      ],
      happenedOn: today,
      note: mark,
    }),
  );
  await owner.sources.recordViabilityTest(
    sent({
      testId,
      sourceId: seedSourceId,
      testedOn: today,
      method: 'germination' as const,
      seedsPerReplicate: 100,
      replicates: [80, 84, 79, 81],
      note: mark,
    }),
  );

  const protocol = {
    plantId,
    method: 'seed' as const,
    ...sampleContent({ mark, containerId, trayId }),
    changeNote: mark,
  };
  await owner.propagation.addProtocol(sent({ protocolId: rows.protocolId, versionId: rows.versionId, ...protocol }));
  await owner.propagation.addProtocol(
    sent({ protocolId: rows.retiredProtocolId, versionId: id(), ...protocol, label: `${mark} old` }),
  );
  await owner.propagation.retireProtocol(sent({ protocolId: rows.retiredProtocolId }));

  await owner.propagation.startBatch(
    sent({
      batchId: rows.batchId,
      plantId,
      sourceId,
      method: 'seed' as const,
      unit: 'cell' as const,
      containerId: trayId,
      trays: 2,
      placeId,
      happenedOn: '2026-04-20',
      targetContainerId: containerId,
      note: mark,
    }),
  );
  await owner.propagation.potBatch(
    sent({
      batchId: rows.batchId,
      happenedOn: today,
      firstAlive: '2026-05-01',
      lots: [{ lotId: rows.batchLotId, containerId, placeId, unitsOut: 20, pottedUnits: 20 }],
    }),
  );

  await owner.propagation.startBatch(
    sent({
      batchId: rows.packsId,
      plantId,
      sourceId,
      protocolVersionId: rows.versionId,
      method: 'seed' as const,
      unit: 'pack' as const,
      containerId: null,
      units: 6,
      seedsSown: 300,
      placeId,
      happenedOn: '2026-04-20',
      note: mark,
    }),
  );

  const line = { plantId, containerId, units: 5, bedId: rows.bedId };
  const order = {
    clientId: rows.clientId,
    siteId: rows.siteId,
    kind: 'installation' as const,
    dueOn: '2026-06-01',
    note: mark,
  };
  await owner.orders.addOrder(
    sent({
      orderId: rows.orderId,
      ...order,
      lines: [
        { lineId: rows.lineId, ...line },
        { lineId: rows.pinnedLineId, ...line },
      ],
    }),
  );
  await owner.promises.pinReservation(sent({ lineId: rows.pinnedLineId, supplyId: lotId, units: 3 }));
  await owner.orders.addOrder(
    sent({ orderId: rows.stagedOrderId, ...order, lines: [{ lineId: rows.stagedLineId, ...line }] }),
  );
  await owner.gardens.pullForOrder(
    sent({
      orderId: rows.stagedOrderId,
      happenedOn: today,
      rows: [{ lineId: rows.stagedLineId, lotId, placeId, units: 4 }],
    }),
  );

  await owner.files.addPhoto(
    sent({
      attachmentId: rows.attachmentId,
      subject: { kind: 'lot' as const, id: lotId },
      caption: mark,
      bytes: samplePhoto,
    }),
  );
  await owner.planning.addExpectedDemand(
    sent({ demandId: rows.demandId, plantId, containerId, wanted: '2027-spring', units: 60, note: mark }),
  );

  const [{ lossId } = { lossId: '' }] = await sql<{ lossId: string }>(
    `INSERT INTO line_loss (nursery_id, line_id, command_id, cause, units, filled_before, supplies, happened_on)
    VALUES ($1, $2, $3, 'entry', 1, 5, '[]', $4) RETURNING id::text AS "lossId"`,
    [nurseryId, rows.lineId, entryId, today],
  );

  return {
    mark,
    today,
    personId: nursery.people.crew.personId,
    ...grounds,
    seedSourceId,
    secondSeedSourceId,
    blendId,
    testId,
    movementId,
    lotId,
    twinLotId,
    heldLotId,
    bedLotId,
    entryId,
    lossId,
    ...rows,
  };
}
