import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { requireSubstitutionRule, rulesReaching, type SubstitutionRule } from './rules.ts';

const rule = (id: string, more: Partial<SubstitutionRule> = {}): SubstitutionRule => ({
  id,
  kind: 'another-size',
  reach: {},
  penalty: 2,
  ...more,
});
const plant = { plantId: 'ASTU', genus: 'Asclepias' };
const idsFor = (...rules: SubstitutionRule[]) => rulesReaching(rules, plant).map(({ id }) => id);

describe('of the rules of one kind', () => {
  it('the one for the plant goes before the one for its genus, and that before the one for all', () => {
    const [all, genus, own] = [
      rule('all'),
      rule('genus', { reach: { genus: 'asclepias' }, penalty: 9 }),
      rule('own', { reach: { plantId: 'ASTU' }, penalty: 50 }),
    ];
    expect(idsFor(all, genus, own)).toEqual(['own']);
    expect(idsFor(genus, all)).toEqual(['genus']);
    expect(idsFor(all)).toEqual(['all']);
  });

  it('those for other plants and genera count for nothing', () => {
    expect(
      idsFor(rule('other', { reach: { plantId: 'LIAS' } }), rule('others', { reach: { genus: 'Liatris' } })),
    ).toEqual([]);
  });

  it('two that are equally particular are settled by penalty, then by id', () => {
    expect(idsFor(rule('b', { penalty: 3 }), rule('a', { penalty: 4 }))).toEqual(['b']);
    expect(idsFor(rule('b'), rule('a'))).toEqual(['a']);
  });
});

it('kinds come in their order, whatever the order of reading', () => {
  expect(idsFor(rule('h', { kind: 'same-habit' }), rule('g', { kind: 'same-genus' }), rule('s'))).toEqual([
    's',
    'g',
    'h',
  ]);
});

it.each([
  ['a penalty of nothing', { penalty: 0 }],
  ['a penalty above a hundred', { penalty: 101 }],
  ['a penalty of a part', { penalty: 1.5 }],
  ['a plant and a genus at once', { reach: { plantId: 'ASTU', genus: 'Asclepias' } }],
  ['a kind that there is not', { kind: 'same-colour' as 'same-genus' }],
])('a rule with %s is refused', (_, more) => {
  expect(() => requireSubstitutionRule(rule('a', more))).toThrow(InputError);
});
