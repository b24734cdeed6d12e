import { addDays } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import type { Mother } from './opening.ts';
import { currentProtocol, hasProtocol } from '../protocol.ts';
import type { Stage } from '../stage.ts';

export const CUTTINGS = [
  { plant: 'ASSP', md: '06-08', pieces: 40 },
  { plant: 'ARMA', md: '06-22', pieces: 30 },
  { plant: 'PYVI', md: '06-15', pieces: 48 },
] as const;
export const DIVISIONS = [
  { plant: 'SOSP', md: '04-20', pieces: 30 },
  { plant: 'VISO', md: '09-04', pieces: 36 },
] as const;

export function planFromMother(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  run: { plant: string; md: string; pieces: number; method: 'cutting' | 'division' },
  mother: Mother,
  year: number,
): void {
  const { chance } = stage;
  const startOn = addDays(`${year}-${run.md}`, chance.whole(0, 5));
  const batchId = chance.id();
  stage.onWorkday(startOn, async (day) => {
    const sourceId = chance.id();
    await stage.as('grower').sources.addSource(
      stage.sent({
        sourceId,
        plantId: grounds.plant(run.plant),
        kind: 'mother-plants',
        origin: 'cultivated',
        provenance: 'mother bed',
        motherLotId: mother.lotId,
        gathered: day,
      }),
    );
    const protocolVersionId = hasProtocol(run.plant, run.method)
      ? (await currentProtocol(stage, run.plant, run.method)).versionId
      : null;
    await stage.as('grower').propagation.startBatch(
      stage.sent({
        batchId,
        plantId: grounds.plant(run.plant),
        sourceId,
        method: run.method,
        protocolVersionId,
        unit: 'piece',
        containerId: null,
        units: run.pieces,
        placeId: grounds.place('H1-B'),
        happenedOn: day,
        targetContainerId: grounds.container('tall-1l'),
        cautiousUnits: Math.floor(run.pieces * 0.4),
        usualUnits: Math.floor(run.pieces * 0.65),
        readyOn: addDays(day, 110),
      }),
    );
  });
  const rooted = Math.round(run.pieces * (0.6 + chance.share() * 0.25));
  stage.onWorkday(
    addDays(startOn, 24),
    async (day) =>
      void (await stage
        .as('crew')
        .propagation.countBatch(stage.sent({ batchId, emergedUnits: rooted, countKind: 'counted', happenedOn: day }))),
  );
  stage.onWorkday(addDays(startOn, 40), async (day) => {
    const lot = lots.add({ lotId: chance.id(), plant: run.plant, container: 'tall-1l', place: 'H2-2', since: day });
    await stage.as('crew').propagation.potBatch(
      stage.sent({
        batchId,
        happenedOn: day,
        lots: [
          {
            lotId: lot.lotId,
            containerId: grounds.container('tall-1l'),
            placeId: grounds.place('H2-2'),
            unitsOut: rooted,
            pottedUnits: rooted,
          },
        ],
      }),
    );
    await stage
      .as('crew')
      .propagation.closeBatch(stage.sent({ batchId, writeOffCause: 'failed', happenedOn: day, confirmed: true }));
  });
}
