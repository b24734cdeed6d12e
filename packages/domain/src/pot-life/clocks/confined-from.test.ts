import { describe, expect, it } from 'vitest';
import { InputError } from '../../kernel/input.ts';
import { confinedFrom } from './confined-from.ts';

describe('the confined clock starts', () => {
  it('in cells with the first emergence', () => {
    expect(confinedFrom({ kind: 'cell-sown', firstEmergedOn: '2027-04-20' })).toEqual({
      confinedOn: '2027-04-20',
      assumed: false,
    });
  });

  it('not at all while nothing has emerged', () => {
    expect(confinedFrom({ kind: 'cell-sown', firstEmergedOn: null })).toEqual({ confinedOn: null, assumed: false });
  });

  it('from an open flat with pricking out', () => {
    expect(confinedFrom({ kind: 'flat', prickedOutOn: '2027-05-02' }).confinedOn).toBe('2027-05-02');
  });

  it('for cuttings with the first rooted count', () => {
    expect(confinedFrom({ kind: 'cutting', firstRootedOn: '2027-07-01' }).confinedOn).toBe('2027-07-01');
  });

  it.each(['division', 'lifted', 'bare-root'] as const)('for a %s with potting', (kind) => {
    expect(confinedFrom({ kind, pottedOn: '2027-04-14' }).confinedOn).toBe('2027-04-14');
  });

  it('for bought plugs with the stated sowing and the days to germinate', () => {
    expect(
      confinedFrom({ kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: '2027-02-01', germinationDays: 14 }),
    ).toEqual({
      confinedOn: '2027-02-15',
      assumed: false,
    });
  });

  it('for bought plugs of unknown sowing ten weeks before arrival, assumed', () => {
    expect(confinedFrom({ kind: 'bought-plugs', arrivedOn: '2027-05-10' })).toEqual({
      confinedOn: '2027-03-01',
      assumed: true,
    });
  });

  it('for bought plugs with a rough sowing from its earliest day, assumed', () => {
    expect(
      confinedFrom({ kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: '2027-02', germinationDays: 14 }),
    ).toEqual({
      confinedOn: '2027-02-15',
      assumed: true,
    });
  });

  it('never before the seed was sown', () => {
    const plugs = { kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: '2027-04-01' } as const;
    expect(confinedFrom(plugs)).toEqual({ confinedOn: '2027-04-01', assumed: true });
  });

  it('never after the plugs had arrived', () => {
    const plugs = { kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: '2027-05-01', germinationDays: 21 } as const;
    expect(confinedFrom(plugs)).toEqual({ confinedOn: '2027-05-10', assumed: true });
  });

  it.each([
    ['2026-06-12', '2026-06-12', false],
    ['2026-spring', '2026-03-01', true],
    ['2025', '2025-01-01', true],
  ])('for opening stock remembered as %s on %s', (since, confinedOn, assumed) => {
    expect(confinedFrom({ kind: 'opening', since })).toEqual({ confinedOn, assumed });
  });

  it('on no day that does not exist', () => {
    expect(() => confinedFrom({ kind: 'flat', prickedOutOn: '2027-02-29' })).toThrow(/^prickedOutOn: /);
    expect(() => confinedFrom({ kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: 'lately' })).toThrow(/^sown: /);
    expect(() =>
      confinedFrom({ kind: 'bought-plugs', arrivedOn: '2027-05-10', sown: '2027-02-01', germinationDays: -1 }),
    ).toThrow(InputError);
  });
});
