import type { TestNursery } from '../nursery.ts';
import { stockOf } from '../stock.ts';

/** Plants, containers, places and sources: one in use, one idle and one retired of each. */
export async function addSampleGrounds(nursery: Pick<TestNursery, 'nurseryId' | 'sql'>, mark: string) {
  const { nurseryId, sql } = nursery;
  const stock = stockOf(nursery);
  const retire = (table: 'plant' | 'container' | 'place' | 'source', id: string) =>
    sql(`UPDATE ${table} SET retired_at = '2026-05-01' WHERE nursery_id = $1 AND id = $2`, [nurseryId, id]);

  const plantId = await stock.addPlant({ name: `Asclepias ${mark}`, code: 'ASTU' });
  const otherPlantId = await stock.addPlant({ name: `Monarda ${mark}`, code: 'MOFI', rootHabit: 'rhizome' });
  const idlePlantId = await stock.addPlant({ name: `Liatris ${mark}`, code: 'LIAS', rootHabit: 'tuber' });
  const retiredPlantId = await stock.addPlant({ name: `Baptisia ${mark}`, code: 'BAAL' });
  await retire('plant', retiredPlantId);
  const containerId = await stock.addContainer({ code: `${mark}-1l` });
  const bigContainerId = await stock.addContainer({ code: `${mark}-4l`, volumeMl: 4000 });
  const trayId = await stock.addContainer({ code: `${mark}-50`, kind: 'tray', volumeMl: 110, cells: 50 });
  const groundId = await stock.addContainer({ code: `${mark}-ground`, kind: 'ground', volumeMl: null });
  const idleContainerId = await stock.addContainer({ code: `${mark}-idle` });
  const retiredContainerId = await stock.addContainer({ code: `${mark}-gone` });
  await retire('container', retiredContainerId);
  const placeId = await stock.addPlace({ code: `${mark}B1` });
  const otherPlaceId = await stock.addPlace({ code: `${mark}B2` });
  const idlePlaceId = await stock.addPlace({ code: `${mark}B3` });
  const retiredPlaceId = await stock.addPlace({ code: `${mark}B4` });
  await retire('place', retiredPlaceId);
  const closedPlaceId = await stock.addPlace({ code: `${mark}B5` });
  await sql(
    `UPDATE place SET closed_until_at = '2026-05-21T12:00:00Z', closed_reason = $3, cover_md = '05-25' WHERE nursery_id = $1 AND id = $2`,
    [nurseryId, closedPlaceId, mark],
  );
  const nurseryBedId = await stock.addPlace({ code: `${mark}N1`, kind: 'nursery-bed' });
  const sourceId = await stock.addSource(plantId, { kind: 'seed-collection', seedZone: mark });
  const idleSourceId = await stock.addSource(plantId);
  const retiredSourceId = await stock.addSource(plantId);
  await retire('source', retiredSourceId);
  await sql('UPDATE source SET provenance = $2 WHERE nursery_id = $1', [nurseryId, `${mark} fen`]);

  return {
    plantId,
    otherPlantId,
    idlePlantId,
    retiredPlantId,
    containerId,
    bigContainerId,
    trayId,
    groundId,
    idleContainerId,
    retiredContainerId,
    placeId,
    otherPlaceId,
    idlePlaceId,
    retiredPlaceId,
    closedPlaceId,
    nurseryBedId,
    sourceId,
    idleSourceId,
    retiredSourceId,
  };
}
