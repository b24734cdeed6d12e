import { addDays } from '@rootclock/domain';
import { referenceId } from '../../features/plants/reference-load.ts';
import type { Grounds } from '../grounds.ts';
import { anyOf } from '../random.ts';
import type { Stage } from '../stage.ts';

interface Expected {
  plant: string;
  container: string;
  units: number;
  /** Of one plant, in cents. */
  value: number | null;
  note: string;
  wanted: string;
}

/** Raising most plants from seed, the cold before it included, takes up to three quarters of a year when it has to be sure. */
const LEAST_AHEAD_DAYS = 270;
const STARTS = { spring: '03-01', summer: '06-01', autumn: '09-01' } as const;

/** The first season that leaves time to raise something for it, and the one after. */
function nextSeasons(today: string): { soon: string; later: string } {
  const year = Number(today.slice(0, 4));
  const seasons = [year, year + 1, year + 2].flatMap((each) =>
    Object.entries(STARTS).map(([name, md]) => ({ text: `${each}-${name}`, on: `${each}-${md}` })),
  );
  const ahead = seasons.filter(({ on }) => on >= addDays(today, LEAST_AHEAD_DAYS));
  return { soon: anyOf(ahead, 0).text, later: anyOf(ahead, 1).text };
}

/** What is expected of next season beyond the orders: most of it ordinary, some of it too late, unknown here, or more than the benches hold. */
export function planExpectations(stage: Stage, grounds: Grounds): void {
  const { soon, later } = nextSeasons(stage.today);
  const expected: Expected[] = [
    { plant: 'ASTU', container: 'tall-1l', units: 240, value: 950, note: 'market stall and walk-ins', wanted: soon },
    { plant: 'ECPU', container: 'pot-1l', units: 160, value: 800, note: 'market stall and walk-ins', wanted: soon },
    { plant: 'MOFI', container: 'pot-1l', units: 120, value: 750, note: '', wanted: soon },
    { plant: 'LIAS', container: 'tall-1l', units: 90, value: 900, note: 'gardens, as every year', wanted: later },
    { plant: 'SYNO', container: 'pot-1l', units: 110, value: 750, note: '', wanted: later },
    { plant: 'PEDI', container: 'tall-1l', units: 60, value: null, note: 'school gardens ask for it', wanted: soon },
    // Asked for in a few weeks, when no sowing could be ready.
    {
      plant: 'ZIAU',
      container: 'pot-1l',
      units: 45,
      value: 800,
      note: 'a church garden asked on the telephone',
      wanted: addDays(stage.today, 24),
    },
    // The tropical milkweed, which this nursery raises no more.
    {
      plant: 'ASCU',
      container: 'pot-1l',
      units: 20,
      value: null,
      note: 'people ask for it by name; talk them into the native ones',
      wanted: soon,
    },
    // Far more than the benches hold.
    {
      plant: 'SCSC',
      container: 'pot-9cm',
      units: 36_000,
      value: 120,
      note: 'a roadside planting that may come',
      wanted: soon,
    },
  ];
  stage.on(addDays(stage.today, -6), async () => {
    for (const method of ['seed', 'cutting'])
      await stage
        .as('grower')
        .propagation.retireProtocol(
          stage.sent({ protocolId: referenceId(stage.nurseryId, 'protocol', `ASCU/${method}`) }),
        );
    for (const { plant, container, units, value, note, wanted } of expected) {
      await stage.as('grower').planning.addExpectedDemand(
        stage.sent({
          demandId: stage.chance.id(),
          plantId: grounds.plant(plant),
          containerId: grounds.container(container),
          wanted,
          units,
          unitValueMinor: value,
          note,
        }),
      );
    }
  });
}
