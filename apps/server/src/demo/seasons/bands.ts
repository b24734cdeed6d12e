import { addDays, plantBy, potBand, type PlantingWindow, type PotLifeRule } from '@rootclock/domain';
import { referenceContainers, referencePlants, referenceWindows } from '../../reference/index.ts';
import type { Grounds } from '../grounds.ts';
import { type DemoLots, readStanding } from '../lots.ts';
import { anyOf } from '../random.ts';
import type { Stage } from '../stage.ts';

const NOTICE_DAYS = 45;
const ONE_YEAR: PotLifeRule = { id: 'one-year', basis: 'confined', span: 'P1Y', reach: { genus: 'Asclepias' } };

interface Wanted {
  name: string;
  fits(state: string, band: string): boolean;
}
const WANTED: readonly Wanted[] = [
  { name: 'past its day', fits: (state, band) => state === 'window' && band === 'past' },
  { name: 'due soon', fits: (_, band) => band === 'due' },
  { name: 'coming', fits: (_, band) => band === 'coming' },
  { name: 'with time', fits: (state, band) => state === 'window' && band === 'ample' },
  { name: 'without a window', fits: (state) => state === 'no-window' },
];

/**
 * Milkweeds potted on such days that today, whatever day it is, some stand in each band of the board. The days are found with the clock itself,
 * by trying: when the roots were confined, and whether the lot was potted up since.
 */
export function planBands(stage: Stage, grounds: Grounds, lots: DemoLots): void {
  const windows: PlantingWindow[] = referenceWindows.map(({ code, opensMd, closesMd, maxContainerMl, region }) => ({
    id: code,
    opensMd,
    closesMd,
    maxContainerMl,
    region,
  }));
  const volumeOf = (code: string) => referenceContainers.find((container) => container.code === code)?.volumeMl ?? null;
  const milkweeds = referencePlants.filter(
    ({ code, genus }) => genus === 'Asclepias' && code.startsWith('AS') && code.length === 4 && code !== 'ASCU',
  );
  WANTED.forEach((wanted, i) => {
    const plant = anyOf(milkweeds, i);
    const days = findDays(stage.today, wanted, windows, volumeOf('class-1'), plant.facts.dormantMonths.value);
    if (days) planLot(stage, grounds, lots, plant.code, days);
  });
}

interface Days {
  confinedOn: string;
  pottedUpOn: string;
}

function findDays(
  today: string,
  wanted: Wanted,
  windows: readonly PlantingWindow[],
  containerMl: number | null,
  dormantMonths: readonly number[],
): Days | null {
  for (let age = 30; age <= 480; age += 3) {
    for (let since = 3; since < Math.min(age, 240); since += 4) {
      const days = { confinedOn: addDays(today, -age), pottedUpOn: addDays(today, -since) };
      const { state, plantByOn } = plantBy({
        confinedOn: days.confinedOn,
        containerOn: days.pottedUpOn,
        rules: [ONE_YEAR],
        windows,
        containerMl,
        dormantMonths,
      });
      if (wanted.fits(state, potBand(plantByOn, today, NOTICE_DAYS).band)) return days;
    }
  }
  return null;
}

function planLot(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  plant: string,
  { confinedOn, pottedUpOn }: Days,
): void {
  const small = stage.chance.id();
  stage.on(addDays(pottedUpOn, -2), async (day) => {
    await stage.as('grower').stock.receiveBought(
      stage.sent({
        happenedOn: day,
        vendor: 'Hollow Creek Perennials',
        pesticideStatement: 'no systemic insecticide used, stated in writing',
        quarantine: false,
        lines: [
          {
            lotId: small,
            plantId: grounds.plant(plant),
            form: 'plugs',
            containerId: grounds.container('plug-50-deep'),
            placeId: grounds.place('H2-2'),
            invoicedUnits: 24,
            receivedUnits: 24,
            sown: confinedOn,
            germinationDays: 0,
          },
        ],
      }),
    );
  });
  stage.on(pottedUpOn, async (day) => {
    const { onHand } = (await readStanding(stage))(small);
    if (onHand === 0) return;
    const lot = lots.add({ lotId: stage.chance.id(), plant, container: 'class-1', place: 'Y-S', since: day });
    await stage.as('crew').stock.potUpLot(
      stage.sent({
        lotId: small,
        happenedOn: day,
        into: [
          {
            lotId: lot.lotId,
            containerId: grounds.container('class-1'),
            placeId: grounds.place('Y-S'),
            units: onHand,
            readyOn: day,
          },
        ],
      }),
    );
  });
}
