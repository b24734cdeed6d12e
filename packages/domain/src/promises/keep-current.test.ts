import { describe, expect, it } from 'vitest';
import type { AllocationDemand, AllocationInstance, AllocationSupply } from './instance/instance.ts';
import { keepCurrent } from './keep-current.ts';

const lot = (id: string, units: number, more: Partial<AllocationSupply> = {}): AllocationSupply => ({
  id,
  item: 'A',
  units,
  readyOn: '2026-04-01',
  plantByOn: null,
  unitValue: 1,
  ...more,
});
const line = (id: string, rank: number, units: number, more: Partial<AllocationDemand> = {}): AllocationDemand => ({
  id,
  rank,
  units,
  on: '2026-05-01',
  accepts: [{ item: 'A', penalty: 0 }],
  ...more,
});
const kept = (
  supply: AllocationSupply[],
  demand: AllocationDemand[],
  current: NonNullable<AllocationInstance['current']>,
) =>
  keepCurrent({ today: '2026-05-01', horizonOn: '2026-10-31', supply, demand, current }).map(
    (row) => `${row.supply} ${row.demand} ${row.units}`,
  );

describe('keepCurrent', () => {
  it('gives nothing to a line that held nothing', () =>
    expect(kept([lot('S1', 10)], [line('D1', 1, 5)], [])).toEqual([]));
  it('takes from the last rank first where fewer are left', () =>
    expect(
      kept(
        [lot('S1', 7)],
        [line('D1', 2, 5), line('D2', 1, 5)],
        [
          { supply: 'S1', demand: 'D1', units: 5 },
          { supply: 'S1', demand: 'D2', units: 5 },
        ],
      ),
    ).toEqual(['S1 D2 5', 'S1 D1 2']));
  it('keeps no more than a line wants', () =>
    expect(kept([lot('S1', 7)], [line('D1', 1, 3)], [{ supply: 'S1', demand: 'D1', units: 5 }])).toEqual(['S1 D1 3']));
  it('gives up what no longer serves', () =>
    expect(
      kept(
        [lot('S1', 5, { plantByOn: '2026-04-30' }), lot('S2', 5), lot('S3', 5)],
        [line('D1', 1, 9, { refuses: ['S2'] })],
        ['S1', 'S2', 'S3'].map((supply) => ({ supply, demand: 'D1', units: 3 })),
      ),
    ).toEqual(['S3 D1 3']));
});
