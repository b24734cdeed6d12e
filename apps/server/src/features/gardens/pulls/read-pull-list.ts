import { gardens, promises } from '@rootclock/contracts';
import { compareText, EVERYONE } from '@rootclock/domain';
import { productCautions } from '../../../reference/cautions.ts';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { readCircumstances } from '../../promises/orders/order-page-reads.ts';
import { readOrder } from '../../promises/orders/read-order.ts';
import { type PlantCare, readCare, readHolds, readPlaceStates } from './reads.ts';

/** What to fetch for an order, place by place, with what a crew must know of each plant. */
export const readPullList = query({
  name: 'readPullList',
  input: gardens.readPullList,
  roles: EVERYONE,
  read: async (context, input): Promise<gardens.PullList> => {
    const order = await readOrder.read(context, input);
    const { siteAddress } = await readCircumstances(context, order.id);
    const rows = await pullRows(context, order);
    const care = await readCare(context, [
      ...new Set([
        ...rows.map(({ plantId }) => plantId),
        ...order.lineRows.filter(({ withdrawnOn }) => withdrawnOn === null).map(({ plantId }) => plantId),
      ]),
    ]);
    return {
      orderId: order.id,
      orderCode: order.code,
      kind: order.kind,
      dueOn: order.dueOn,
      clientName: order.clientName,
      siteName: order.siteName,
      siteAddress,
      livestockNear: order.livestockNear,
      issuedOn: order.pullIssuedOn,
      rows,
      plants: care.map(withCautions),
      workCautions: order.kind === 'installation' ? cautionsOn('digging', 'selling') : cautionsOn('selling'),
      notPotted: order.lineRows.flatMap((line) =>
        line.reservations
          .filter(({ supplyKind }) => supplyKind === 'batch')
          .map(({ code, scientificName, units, readyOn }) => ({
            lineId: line.id,
            batchCode: code,
            scientificName,
            units,
            readyOn,
          })),
      ),
      short: order.lineRows
        .filter(({ shortUnits }) => shortUnits > 0)
        .map(({ id, scientificName, containerCode, shortUnits }) => ({
          lineId: id,
          scientificName,
          containerCode,
          units: shortUnits,
        })),
      staged: order.lineRows.flatMap((line) => line.staged.map((row) => ({ lineId: line.id, ...row }))),
    };
  },
});

/** Reserved units laid out over the places where each lot stands, in the order of place codes. What two lines want of one lot is never counted twice. */
async function pullRows(context: ReadContext, order: promises.OrderPage): Promise<gardens.PullRow[]> {
  const left = new Map<string, number>();
  const rows = order.lineRows.flatMap((line) =>
    line.reservations
      .filter(({ supplyKind }) => supplyKind === 'lot')
      .flatMap((reservation) => {
        let wanted = reservation.units;
        return reservation.places.flatMap((place) => {
          const key = `${reservation.supplyId}/${place.placeId}`;
          const there = left.get(key) ?? place.units;
          const units = Math.min(wanted, there);
          wanted -= units;
          left.set(key, there - units);
          return units === 0 ? [] : [{ line, reservation, place, units }];
        });
      }),
  );
  const places = await readPlaceStates(context, [...new Set(rows.map(({ place }) => place.placeId))]);
  const holds = await readHolds(context, [...new Set(rows.map(({ reservation }) => reservation.supplyId))]);
  const merged = new Map<string, gardens.PullRow>();
  for (const { line, reservation, place, units } of rows) {
    const state = places.get(place.placeId);
    const key = `${line.id}/${reservation.supplyId}/${place.placeId}`;
    const before = merged.get(key)?.units ?? 0;
    merged.set(key, {
      placeId: place.placeId,
      placeCode: place.code,
      placeName: state?.name ?? place.code,
      closedUntilAt: state?.closedUntilAt ?? null,
      closedReason: state?.closedReason ?? null,
      lotId: reservation.supplyId,
      lotCode: reservation.code,
      lineId: line.id,
      bedName: line.bedName,
      plantId: reservation.plantId,
      scientificName: reservation.scientificName,
      vernacularName: reservation.plantId === line.plantId ? line.vernacularName : '',
      containerCode: reservation.containerCode,
      units: before + units,
      rootChecked: reservation.rootChecked,
      plantByOn: reservation.plantByOn,
      holds: holds.get(reservation.supplyId) ?? [],
      flags: line.flags,
      namesakes: line.namesakes,
    });
  }
  return [...merged.values()].sort(
    (a, b) =>
      compareText(a.placeCode, b.placeCode) || compareText(a.lotCode, b.lotCode) || compareText(a.lineId, b.lineId),
  );
}

type Work = 'digging' | 'selling';

function cautionsOn(...works: Work[]): gardens.PullList['workCautions'] {
  return productCautions.flatMap(({ on, text, standing, source }) =>
    'work' in on && works.some((work) => work === on.work) ? [{ text, standing, source }] : [],
  );
}

/** The plant's own cautions and those of its genus; the same sentence is not said twice. */
function withCautions({ genus, ...plant }: PlantCare): gardens.PullPlant {
  const ofGenus = productCautions.flatMap(({ on, text, standing, source }) =>
    'genus' in on && on.genus === genus ? [{ text, standing, source }] : [],
  );
  const said = new Set(plant.cautions.map(({ text }) => text));
  return { ...plant, cautions: [...plant.cautions, ...ofGenus.filter(({ text }) => !said.has(text))] };
}
