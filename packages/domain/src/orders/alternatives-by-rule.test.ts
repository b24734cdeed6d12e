import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { alternativesByRule, type SubstitutePlant, type SubstituteQuestion } from './alternatives-by-rule.ts';
import { SUBSTITUTION_KINDS, type SubstitutionKind, type SubstitutionRule } from './rules.ts';

const plant = (plantId: string, scientificName: string, more: Partial<SubstitutePlant> = {}): SubstitutePlant => ({
  plantId,
  scientificName,
  genus: scientificName.split(' ')[0] ?? '',
  nativeRegions: ['IA'],
  heightCm: [60, 80],
  light: 'full sun',
  bloomMonths: [6, 7],
  ...more,
});
const plants = [
  plant('ASTU', 'Asclepias tuberosa'),
  plant('ASVE', 'Asclepias verticillata', { bloomMonths: [9] }),
  plant('ASSU', 'Asclepias sullivantii', { nativeRegions: ['MO'], bloomMonths: [9] }),
  plant('ASCU', 'Asclepias curassavica', { nativeRegions: [] }),
  plant('COPA', 'Coreopsis palmata'),
  plant('RUHI', 'Rudbeckia hirta', { nativeRegions: [], heightCm: [40, 80] }),
  plant('LUPE', 'Lupinus perennis', { heightCm: null }),
];
const items = ['1l', '4l'].flatMap((containerId) => plants.map(({ plantId }) => ({ plantId, containerId })));
const rule = (kind: SubstitutionKind, penalty: number, more: Partial<SubstitutionRule> = {}): SubstitutionRule => ({
  id: `${kind}-${penalty}`,
  kind,
  reach: {},
  penalty,
  ...more,
});
const ask = (more: Partial<SubstituteQuestion> = {}) =>
  alternativesByRule({
    asked: { plantId: 'ASTU', containerId: '1l' },
    rules: [],
    plants,
    items,
    region: 'IA',
    nativesOnly: false,
    ...more,
  });
const short = (more: Partial<SubstituteQuestion>) =>
  ask(more).alternatives.map(({ plantId, containerId, penalty }) => `${plantId}@${containerId} ${penalty}`);

describe('by rule', () => {
  it('nothing stands in where there is no rule', () => {
    expect(ask()).toEqual({ alternatives: [], idle: [], notNative: [], untold: [] });
  });

  it('another size is the same plant in every other pot', () => {
    expect(ask({ rules: [rule('another-size', 2)] }).alternatives).toEqual([
      {
        plantId: 'ASTU',
        containerId: '4l',
        penalty: 2,
        ruleId: 'another-size-2',
        kind: 'another-size',
        shared: null,
        native: true,
      },
    ]);
  });

  it('the same genus is only what is native to the region, in the same pot; what is not is named', () => {
    const { alternatives, notNative } = ask({ rules: [rule('same-genus', 3)] });
    expect(alternatives.map(({ plantId, containerId, native }) => [plantId, containerId, native])).toEqual([
      ['ASVE', '1l', true],
    ]);
    expect(notNative).toEqual(['Asclepias curassavica', 'Asclepias sullivantii']);
  });

  it('the same genus says nothing where the site names no region', () => {
    expect(ask({ rules: [rule('same-genus', 3)], region: null })).toEqual({
      alternatives: [],
      idle: [{ ruleId: 'same-genus-3', kind: 'same-genus', why: 'no-region', untold: [] }],
      notNative: [],
      untold: [],
    });
  });

  it('the same habit is whatever agrees in height, light and bloom, with what it shares', () => {
    const { alternatives, untold } = ask({ rules: [rule('same-habit', 6)] });
    expect(alternatives.map(({ plantId, native }) => [plantId, native])).toEqual([
      ['ASCU', false],
      ['COPA', true],
      ['RUHI', false],
    ]);
    expect(alternatives[1]?.shared).toEqual({ heightClass: 'medium', lights: ['full-sun'], bloomMonths: [6, 7] });
    expect(untold).toEqual(['Lupinus perennis']);
  });

  it('the same habit says nothing of a plant whose own traits are not told', () => {
    expect(ask({ asked: { plantId: 'LUPE', containerId: '1l' }, rules: [rule('same-habit', 6)] })).toMatchObject({
      alternatives: [],
      idle: [{ why: 'untold', untold: ['height'] }],
      untold: [],
    });
  });

  it('nothing that is not native stands in where the order takes only natives', () => {
    const rules = [rule('same-habit', 6), rule('another-size', 1)];
    expect(short({ rules, nativesOnly: true })).toEqual(['ASTU@4l 1', 'COPA@1l 6']);
    expect(ask({ rules, nativesOnly: true }).notNative).toEqual(['Asclepias curassavica', 'Rudbeckia hirta']);
    expect(ask({ rules, nativesOnly: true, region: null }).alternatives).toEqual([]);
  });

  it('what two rules name is offered once, with the smaller penalty and its rule', () => {
    const near = [...plants, plant('ASHI', 'Asclepias hirtella')];
    const of = (genus: number, habit: number) =>
      ask({
        plants: near,
        items: [{ plantId: 'ASHI', containerId: '1l' }],
        rules: [rule('same-habit', habit), rule('same-genus', genus)],
      }).alternatives.map(({ kind, penalty }) => [kind, penalty]);
    expect(of(3, 6)).toEqual([['same-genus', 3]]);
    expect(of(7, 6)).toEqual([['same-habit', 6]]);
    expect(of(5, 5)).toEqual([['same-genus', 5]]);
  });

  it('of an unknown plant is refused', () => {
    expect(() => ask({ asked: { plantId: 'none', containerId: '1l' } })).toThrow(InputError);
  });
});

describe('whatever the plants and rules', () => {
  const nativeRegions = fc.subarray(['IA', 'MO', 'WI']);
  const ids = ['P1', 'P2', 'P3', 'P4', 'P5'] as const;
  const anyPlants = fc.tuple(
    ...ids.map((plantId) =>
      fc.record({
        plantId: fc.constant(plantId),
        scientificName: fc.constant(`Genus ${plantId}`),
        genus: fc.constantFrom('Asclepias', 'Liatris'),
        nativeRegions,
        heightCm: fc.option(fc.constantFrom([30, 50] as const, [60, 80] as const)),
        light: fc.option(fc.constantFrom('full sun', 'full sun to part shade', 'bright')),
        bloomMonths: fc.option(fc.subarray([5, 6, 7])),
      }),
    ),
  );
  const anyRules = fc.uniqueArray(
    fc.record({
      id: fc.uuid(),
      kind: fc.constantFrom(...SUBSTITUTION_KINDS),
      penalty: fc.integer({ min: 1, max: 100 }),
      reach: fc.constantFrom({}, { genus: 'Asclepias' }, { genus: 'Liatris' }, { plantId: 'P1' }, { plantId: 'P2' }),
    }),
    { selector: ({ id }) => id, maxLength: 8 },
  );
  const anyItems = fc.subarray(
    ['1l', '4l', '9cm'].flatMap((containerId) => ids.map((plantId) => ({ plantId, containerId }))),
  );
  const question = fc.record({
    asked: fc.constant({ plantId: 'P1', containerId: '1l' }),
    plants: anyPlants,
    rules: anyRules,
    items: anyItems,
    region: fc.option(fc.constantFrom('IA', 'MO')),
    nativesOnly: fc.boolean(),
  });

  it('no plant is offered that is not native where natives are asked for, and none of the genus ever', () => {
    fc.assert(
      fc.property(question, (asked) => {
        for (const { plantId, kind } of alternativesByRule(asked).alternatives) {
          const regions = asked.plants.find((each) => each.plantId === plantId)?.nativeRegions ?? [];
          if (asked.nativesOnly || kind === 'same-genus')
            expect(asked.region !== null && regions.includes(asked.region)).toBe(true);
        }
      }),
      { seed: 412, numRuns: 500 },
    );
  });

  it('the item itself is never offered, each item at most once, and only items that can be had', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const keys = alternativesByRule(asked).alternatives.map(
          ({ plantId, containerId }) => `${plantId}@${containerId}`,
        );
        expect(new Set(keys).size).toBe(keys.length);
        expect(keys).not.toContain('P1@1l');
        expect(asked.items.map(({ plantId, containerId }) => `${plantId}@${containerId}`)).toEqual(
          expect.arrayContaining(keys),
        );
      }),
      { seed: 413, numRuns: 500 },
    );
  });

  it('each carries the penalty of the rule that it names, the smallest first', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { alternatives } = alternativesByRule(asked);
        for (const { ruleId, penalty, kind } of alternatives)
          expect(asked.rules.find(({ id }) => id === ruleId)).toMatchObject({ penalty, kind });
        expect(alternatives.map(({ penalty }) => penalty)).toEqual(
          alternatives.map(({ penalty }) => penalty).toSorted((a, b) => a - b),
        );
      }),
      { seed: 414, numRuns: 500 },
    );
  });

  it('the order of plants, rules and items changes nothing', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const turned = {
          ...asked,
          plants: asked.plants.toReversed(),
          rules: asked.rules.toReversed(),
          items: asked.items.toReversed(),
        };
        expect(alternativesByRule(turned)).toEqual(alternativesByRule(asked));
      }),
      { seed: 415, numRuns: 500 },
    );
  });

  it('asking for natives only takes away, and never adds', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const keys = (nativesOnly: boolean) =>
          alternativesByRule({ ...asked, nativesOnly }).alternatives.map(
            ({ plantId, containerId }) => `${plantId}@${containerId}`,
          );
        expect(keys(false)).toEqual(expect.arrayContaining(keys(true)));
      }),
      { seed: 416, numRuns: 500 },
    );
  });
});
