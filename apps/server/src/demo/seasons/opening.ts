import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import type { Stage } from '../stage.ts';

/** What stood there when the records began: plant, container, place, units, since when. */
const STOCK = [
  ['ASTU', 'tall-1l', 'Y-S', 38, '-spring'],
  ['ASIN', 'pot-1l', 'Y-N', 52, '-spring'],
  ['ASSY', 'tall-1l', 'Y-S', 24, '-summer'],
  ['ECPA', 'band-23cm', 'Y-S', 30, '-summer'],
  ['ECPU', 'pot-1l', 'Y-N', 60, '-05'],
  ['MOFI', 'pot-1l', 'Y-N', 44, '-06'],
  ['LIAS', 'tall-1l', 'Y-S', 36, '-05'],
  ['LIPY', 'tall-1l', 'Y-S', 28, '-06'],
  ['RUHI', 'pot-9cm', 'CF1', 70, '-09'],
  ['PEDI', 'tall-1l', 'Y-S', 26, '-06'],
  ['BAAU', 'class-1', 'Y-W', 12, ''],
  ['SILA', 'class-1', 'Y-W', 9, ''],
  ['ZIAU', 'pot-1l', 'Y-W', 33, '-05'],
  ['SCSC', 'pot-9cm', 'CF1', 84, '-08'],
  ['SYNO', 'pot-1l', 'Y-N', 40, '-06'],
  ['VIPE', 'plug-50-deep', 'CF2', 45, '-09'],
] as const;

/** Mother stock and a nursery bed: they give cuttings, seed and divisions and are not for sale. */
const MOTHERS = [
  ['ASSP', 'ground', 'NB', 6],
  ['SOSP', 'ground', 'NB', 5],
  ['VISO', 'ground', 'NB', 8],
  ['PYVI', 'ground', 'NB', 4],
  ['ARMA', 'class-3', 'Y-W', 3],
] as const;

export interface Mother {
  lotId: string;
  plant: string;
}

export async function takeInOpening(stage: Stage, grounds: Grounds, lots: DemoLots, day: string): Promise<Mother[]> {
  const { chance } = stage;
  const lastYear = String(Number(day.slice(0, 4)) - 1);
  const rows = STOCK.map(([plant, container, place, units, since]) => {
    const lot = lots.add({ lotId: chance.id(), plant, container, place, since: `${lastYear}-06-01` });
    return {
      lotId: lot.lotId,
      plantId: grounds.plant(plant),
      containerId: grounds.container(container),
      placeId: grounds.place(place),
      units,
      since: `${lastYear}${since}`,
      provenance: chance.pick(['seed gathered on the old railway strip', 'seed of the county remnant', '']),
      rootChecked: true,
    };
  });
  await stage
    .as('owner')
    .stock.receiveOpening(stage.sent({ happenedOn: day, rows, note: 'Stocktaking when the records began' }));

  const mothers = MOTHERS.map(([plant, container, place, units]) => ({
    lotId: chance.id(),
    plant,
    container,
    place,
    units,
  }));
  await stage.as('owner').stock.receiveOpening(
    stage.sent({
      happenedOn: day,
      note: 'Mother stock',
      rows: mothers.map(({ lotId, plant, container, place, units }) => ({
        lotId,
        plantId: grounds.plant(plant),
        containerId: grounds.container(container),
        placeId: grounds.place(place),
        units,
        since: lastYear,
        provenance: 'own selection of local plants',
        rootChecked: true,
      })),
    }),
  );
  await stage
    .as('owner')
    .stock.holdMany(stage.sent({ lotIds: mothers.map(({ lotId }) => lotId), reason: 'mother-stock', happenedOn: day }));

  await stage.as('owner').stock.receiveOpening(
    stage.sent({
      happenedOn: day,
      note: 'Nursery bed, estimated',
      rows: [
        ['CABR', 120],
        ['MOFI', 60],
      ].map(([plant, units]) => ({
        lotId: chance.id(),
        plantId: grounds.plant(String(plant)),
        containerId: grounds.container('ground'),
        placeId: grounds.place('NB'),
        units: Number(units),
        countKind: 'estimated' as const,
      })),
    }),
  );
  for (const year of [0, 365, 730]) planOneLift(stage, grounds, lots, addDays(day, 50 + year));
  return mothers.map(({ lotId, plant }) => ({ lotId, plant }));
}

/** Sedges are lifted from the bed each spring and cut apart: one clump fills three pots. */
function planOneLift(stage: Stage, grounds: Grounds, lots: DemoLots, day: string): void {
  stage.on(day, async () => {
    const bed = await stage
      .as('crew')
      .stock.listLots({ plantId: grounds.plant('CABR'), containerId: grounds.container('ground') });
    const from = bed.rows[0];
    if (!from) return;
    const lot = lots.add({ lotId: stage.chance.id(), plant: 'CABR', container: 'pot-9cm', place: 'H2-1', since: day });
    await stage.as('crew').stock.liftFromBed(
      stage.sent({
        lotId: from.lotId,
        units: 14,
        happenedOn: day,
        note: 'Lifted and cut apart',
        into: [
          {
            lotId: lot.lotId,
            containerId: grounds.container('pot-9cm'),
            placeId: grounds.place('H2-1'),
            units: 42,
            readyOn: addDays(day, 56),
          },
        ],
      }),
    );
  });
}
