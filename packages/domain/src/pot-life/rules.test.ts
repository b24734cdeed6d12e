import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { type PotLifeReach, type PotLifeRule, requireRule, winningRules } from './rules.ts';

const subject = {
  lotId: 'lot-1',
  plantId: 'plant-1',
  containerId: 'pot-1',
  genus: 'Asclepias',
  rootHabit: 'taproot',
} as const;
const rule = (id: string, reach: PotLifeReach, basis: PotLifeRule['basis'] = 'confined'): PotLifeRule => ({
  id,
  basis,
  span: basis === 'no-winter' ? null : 'P1Y',
  reach,
});

const fromParticularToGeneral = [
  rule('of-lot', { lotId: 'lot-1' }),
  rule('of-plant-in-pot', { plantId: 'plant-1', containerId: 'pot-1' }),
  rule('of-plant', { plantId: 'plant-1' }),
  rule('of-genus', { genus: 'Asclepias' }),
  rule('of-habit-in-pot', { rootHabit: 'taproot', containerId: 'pot-1' }),
  rule('of-habit', { rootHabit: 'taproot' }),
];

describe('winning rules', () => {
  it.each(fromParticularToGeneral.map((_, index) => index))(
    'put the reach at place %i before all that follow',
    (index) => {
      const rules = fromParticularToGeneral.slice(index).reverse();
      expect(winningRules(rules, subject)).toEqual([fromParticularToGeneral[index]]);
    },
  );

  it('leave out what reaches others', () => {
    const others = [
      rule('other-lot', { lotId: 'lot-2' }),
      rule('other-pot', { plantId: 'plant-1', containerId: 'pot-2' }),
      rule('other-genus', { genus: 'Liatris' }),
      rule('other-habit', { rootHabit: 'fibrous' }),
    ];
    expect(winningRules(others, subject)).toEqual([]);
  });

  it('do not reach a batch in cells by a lot', () => {
    expect(winningRules([rule('of-lot', { lotId: 'lot-1' })], { ...subject, lotId: null })).toEqual([]);
  });

  it('are one for each basis', () => {
    const rules = [
      rule('winter', { rootHabit: 'taproot' }, 'no-winter'),
      rule('pot', { plantId: 'plant-1' }, 'container'),
      rule('roots', { genus: 'Asclepias' }),
      rule('roots-of-habit', { rootHabit: 'taproot' }),
    ];
    expect(winningRules(rules, subject).map((won) => won.id)).toEqual(['roots', 'pot', 'winter']);
  });

  it('settle equals by id', () => {
    const rules = [rule('b', { genus: 'Asclepias' }), rule('a', { genus: 'asclepias' })];
    expect(winningRules(rules, subject).map((won) => won.id)).toEqual(['a']);
  });

  it('do not depend on the order of reading', () => {
    const shuffled = fc.shuffledSubarray(fromParticularToGeneral, { minLength: 1 });
    fc.assert(
      fc.property(shuffled, (rules) => {
        const sorted = fromParticularToGeneral.filter((one) => rules.includes(one));
        expect(winningRules(rules, subject)).toEqual(winningRules(sorted, subject));
      }),
    );
  });
});

describe('a rule', () => {
  it.each([
    ['nothing', {}],
    ['a container by itself', { containerId: 'pot-1' }],
    ['a genus in a container', { genus: 'Asclepias', containerId: 'pot-1' }],
    ['a lot and its plant', { lotId: 'lot-1', plantId: 'plant-1' }],
  ])('that reaches %s is refused', (_, reach) => {
    expect(() => requireRule(rule('r', reach))).toThrow(/^reach: /);
  });

  it('without a span is refused, except that winter has none', () => {
    expect(() => requireRule({ ...rule('r', { plantId: 'p' }), span: null })).toThrow(/^span: /);
    expect(() => requireRule({ ...rule('r', { plantId: 'p' }, 'no-winter'), span: 'P1Y' })).toThrow(/^span: /);
    expect(requireRule(rule('r', { plantId: 'p' }, 'no-winter')).span).toBeNull();
  });

  it('with a span that cannot be read is refused', () => {
    expect(() => requireRule({ ...rule('r', { plantId: 'p' }), span: '1 year' })).toThrow(InputError);
  });

  it('that forbids the winter cannot allow to carry over it', () => {
    const carry = { maxDays: 30, graceDays: 14 };
    expect(() => requireRule({ ...rule('r', { plantId: 'p' }, 'no-winter'), winterCarry: carry })).toThrow(
      /^winterCarry: /,
    );
  });

  it('with a carry of half days is refused', () => {
    const carry = { maxDays: 30.5, graceDays: 14 };
    expect(() => requireRule({ ...rule('r', { plantId: 'p' }), winterCarry: carry })).toThrow(/^maxDays: /);
  });
});
