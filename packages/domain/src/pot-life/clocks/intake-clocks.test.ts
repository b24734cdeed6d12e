import { describe, expect, it } from 'vitest';
import { boughtClocks, openingClocks } from './intake-clocks.ts';

const opening = { since: '2025-09-14' as string | null, countedOn: '2026-05-20', containerKind: 'pot' as const };
const bought = { form: 'plugs' as const, arrivedOn: '2026-05-20', containerKind: 'tray' as const };

describe('the clocks of opening stock', () => {
  it('run from the day that is known', () => {
    expect(openingClocks(opening)).toEqual({
      pottedOn: '2025-09-14',
      pottedPrecision: 'day',
      confinedOn: '2025-09-14',
      confinedAssumed: false,
      containerOn: '2025-09-14',
      containerAssumed: false,
    });
  });

  it('take the earliest day of a month and say that it is assumed', () => {
    expect(openingClocks({ ...opening, since: '2025-09' })).toMatchObject({
      confinedOn: '2025-09-01',
      confinedAssumed: true,
      containerOn: '2025-09-01',
      containerAssumed: true,
      pottedPrecision: 'month',
    });
  });

  it('take a year before the stocktaking where nobody knows', () => {
    expect(openingClocks({ ...opening, since: null })).toMatchObject({
      pottedOn: '2025-05-20',
      confinedOn: '2025-05-20',
      confinedAssumed: true,
      pottedPrecision: 'year',
    });
  });

  it('never begin before the seed was gathered where nobody knows', () => {
    expect(openingClocks({ ...opening, since: null, gatheredOn: '2025-10-01' })).toMatchObject({
      confinedOn: '2025-10-01',
      confinedAssumed: true,
    });
  });

  it('begin at the stocktaking when the seed is said to be gathered later', () => {
    expect(openingClocks({ ...opening, since: null, gatheredOn: '2026-06-01' }).confinedOn).toBe('2026-05-20');
  });

  it('keep the longer time in plugs for what was potted up since', () => {
    expect(openingClocks({ ...opening, confinedSince: '2025-04' })).toMatchObject({
      confinedOn: '2025-04-01',
      confinedAssumed: true,
      containerOn: '2025-09-14',
      containerAssumed: false,
    });
  });

  it('take the container day where the time in plugs is said to be shorter', () => {
    expect(openingClocks({ ...opening, confinedSince: '2026-01-01' })).toMatchObject({
      confinedOn: '2025-09-14',
      confinedAssumed: false,
    });
  });

  it('do not run in the ground', () => {
    expect(openingClocks({ ...opening, containerKind: 'ground' })).toMatchObject({
      confinedOn: null,
      containerOn: null,
      confinedAssumed: false,
      pottedOn: '2025-09-14',
    });
  });

  it('do not confine roots in an open flat', () => {
    expect(openingClocks({ ...opening, containerKind: 'flat' })).toMatchObject({
      confinedOn: null,
      containerOn: '2025-09-14',
    });
  });
});

describe('the clocks of bought plants', () => {
  it('begin at sowing and the days of germination where both are stated', () => {
    expect(boughtClocks({ ...bought, sown: '2026-02-10', germinationDays: 14 })).toMatchObject({
      pottedOn: '2026-05-20',
      confinedOn: '2026-02-24',
      confinedAssumed: false,
      containerOn: '2026-02-24',
      containerAssumed: false,
    });
  });

  it('begin ten weeks before arrival where nothing is stated', () => {
    expect(boughtClocks(bought)).toMatchObject({
      confinedOn: '2026-03-11',
      confinedAssumed: true,
      containerOn: '2026-03-11',
      containerAssumed: true,
    });
  });

  it('begin on arrival for bare root', () => {
    expect(boughtClocks({ ...bought, form: 'bare-root', containerKind: 'pot' })).toMatchObject({
      confinedOn: '2026-05-20',
      confinedAssumed: false,
      containerOn: '2026-05-20',
    });
  });

  it('take the day in the pot that the vendor stated', () => {
    expect(boughtClocks({ ...bought, form: 'pots', containerKind: 'pot', inPotSince: '2026-04' })).toMatchObject({
      confinedOn: '2026-03-11',
      containerOn: '2026-04-01',
      containerAssumed: true,
    });
  });

  it('are never confined later than the pot in which they stand', () => {
    expect(
      boughtClocks({
        ...bought,
        form: 'pots',
        containerKind: 'pot',
        sown: '2026-03-01',
        germinationDays: 10,
        inPotSince: '2025-09-01',
      }),
    ).toMatchObject({ confinedOn: '2025-09-01', containerOn: '2025-09-01' });
  });

  it('do not run for what goes straight into the ground', () => {
    expect(boughtClocks({ ...bought, form: 'bare-root', containerKind: 'ground' })).toMatchObject({
      confinedOn: null,
      containerOn: null,
    });
  });
});
