import {
  productCautions,
  referenceContainers,
  referencePlants,
  referenceRegions,
  referenceRules,
  referenceSettings,
  referenceWindows,
} from '@rootclock/server/reference/index';
import {
  STANDINGS,
  isMonthDay,
  plantBy,
  requireRule,
  windowsFor,
  winningRules,
  type PotLifeRule,
} from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

/** Rules and windows as the domain takes them, codes standing in for ids. */
const rules = referenceRules.map(({ code, basis, span, reach, winterCarry }): PotLifeRule => ({
  id: code,
  basis,
  span,
  reach: { genus: reach.genus ?? null, rootHabit: reach.rootHabit ?? null, containerId: reach.containerCode ?? null },
  winterCarry,
}));
const windows = referenceWindows.map(({ code, ...window }) => ({ id: code, ...window }));

function bindingRules(code: string, containerCode: string) {
  const plant = referencePlants.find((row) => row.code === code);
  if (plant === undefined) throw new Error(`there is no plant ${code}`);
  return winningRules(rules, {
    lotId: null,
    plantId: code,
    containerId: containerCode,
    genus: plant.genus,
    rootHabit: plant.facts.rootHabit.value,
  });
}

function plantByOf(code: string, containerCode: string, pottedOn: string) {
  const plant = referencePlants.find((row) => row.code === code);
  const container = referenceContainers.find((row) => row.code === containerCode);
  return plantBy({
    confinedOn: pottedOn,
    containerOn: pottedOn,
    rules: bindingRules(code, containerCode),
    windows,
    containerMl: container?.volumeMl ?? null,
    freezeMd: referenceSettings.freezeMd.value,
    dormantMonths: plant?.facts.dormantMonths.value ?? [],
  });
}

describe('pot-life rules', () => {
  it('are rules that can be applied, with a code each', () => {
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
    expect(rules.map((rule) => requireRule(rule))).toEqual(rules);
  });

  it('reach only containers that exist', () => {
    const known = new Set(referenceContainers.map((row) => row.code));
    expect(
      referenceRules.filter(({ reach }) => reach.containerCode !== undefined && !known.has(reach.containerCode)),
    ).toEqual([]);
  });

  it('give a year to milkweeds and to taproots as common practice, with nothing carried through winter', () => {
    const practised = referenceRules.filter((rule) => rule.standing === 'common practice');
    expect(practised).toMatchObject([
      { basis: 'confined', span: 'P1Y', reach: { genus: 'Asclepias' }, winterCarry: null, source: null },
      { basis: 'confined', span: 'P1Y', reach: { rootHabit: 'taproot' }, winterCarry: null, source: null },
    ]);
  });

  it('are assumptions wherever they limit by container', () => {
    const byContainer = referenceRules.filter((rule) => rule.reach.containerCode !== undefined);
    expect(byContainer.length).toBeGreaterThan(10);
    expect(byContainer.filter((rule) => rule.standing !== 'assumed')).toEqual([]);
  });

  it('reach a fibrous milkweed by its genus', () => {
    expect(bindingRules('ASIN', 'pot-2l').map((rule) => rule.id)).toEqual(['milkweed-one-year', 'pot-2l-fibrous']);
  });

  it('leave a fibrous coneflower with the limit of its container alone', () => {
    expect(bindingRules('ECPU', 'pot-2l').map((rule) => rule.id)).toEqual(['pot-2l-fibrous']);
  });

  it('give corms in deep cones a shorter limit than fibrous roots', () => {
    expect(bindingRules('LIAS', 'cone-164').map((rule) => rule.span)).toEqual(['P300D']);
    expect(bindingRules('ECPU', 'cone-164').map((rule) => rule.span)).toEqual(['P18M']);
  });

  it('forbid the winter to small plugs only', () => {
    const forbidden = new Set(
      referenceRules.filter((rule) => rule.basis === 'no-winter').map((rule) => rule.reach.containerCode),
    );
    expect([...forbidden]).toEqual(['plug-288', 'plug-200', 'plug-128']);
  });

  it('limit every plant in every container that is a pot', () => {
    const pots = referenceContainers.filter((row) => row.kind === 'pot' || row.kind === 'tray');
    const unlimited = pots.flatMap((pot) =>
      referencePlants
        .filter((plant) => bindingRules(plant.code, pot.code).length === 0)
        .map((plant) => `${plant.code} in ${pot.code}`),
    );
    expect(unlimited).toEqual([]);
  });

  it('leave the ground without any container limit', () => {
    expect(bindingRules('ECPU', 'ground')).toEqual([]);
  });
});

describe('planting windows of the Upper Midwest', () => {
  it('are open from 15 April to 15 June and from 1 September to 15 October', () => {
    expect(
      windowsFor(windows, { containerMl: 1000 }).ranges.map(({ opensMd, closesMd }) => [opensMd, closesMd]),
    ).toEqual([
      ['04-15', '06-15'],
      ['09-01', '10-15'],
    ]);
  });

  it('close earlier in autumn for small plugs and leave them the spring', () => {
    expect(windowsFor(windows, { containerMl: 22 }).ranges.map(({ opensMd, closesMd }) => [opensMd, closesMd])).toEqual(
      [
        ['04-15', '06-15'],
        ['09-01', '09-20'],
      ],
    );
  });

  it('pull a milkweed potted on 14 April back to the autumn before its year is over', () => {
    expect(plantByOf('ASTU', 'tall-1l', '2026-04-14')).toMatchObject({
      state: 'window',
      limitOn: '2027-04-14',
      plantByOn: '2026-10-15',
      ruleId: 'milkweed-one-year',
    });
  });

  it('let a dormant aster wait in a deep plug for the spring', () => {
    expect(plantByOf('SYNO', 'plug-50-deep', '2026-02-10')).toMatchObject({
      state: 'winter-carry',
      limitOn: '2027-02-10',
      plantByOn: '2027-05-06',
    });
  });
});

describe('settings and cautions', () => {
  it('have a standing from the list', () => {
    const standings = [
      ...Object.values(referenceSettings),
      ...referenceWindows,
      ...referenceRules,
      ...productCautions,
    ].map((row) => row.standing);
    expect(standings.filter((standing) => !STANDINGS.includes(standing))).toEqual([]);
  });

  it('name a source where they are confirmed', () => {
    const confirmed = [...Object.values(referenceSettings), ...productCautions].filter(
      (row) => row.standing === 'confirmed',
    );
    expect(confirmed.length).toBeGreaterThan(0);
    expect(confirmed.filter((row) => (row.source ?? '') === '')).toEqual([]);
  });

  it('begin with 45 days of notice, two to three times the height for roots, and a freeze day that exists', () => {
    expect(referenceSettings.noticeDays.value).toBe(45);
    expect(referenceSettings.rootDepthRatio.value).toEqual([2, 3]);
    expect(isMonthDay(referenceSettings.freezeMd.value)).toBe(true);
  });

  it.each(['milkweed-livestock', 'milkweed-sap', 'pipevine-acids', 'pesticide-label', 'buried-utilities'])(
    'warn with %s',
    (code) => {
      expect(productCautions.filter((caution) => caution.code === code)).toHaveLength(1);
    },
  );

  it('defer to the label, a licensed applicator and local codes where pesticides are named', () => {
    const text = productCautions.find((caution) => caution.code === 'pesticide-label')?.text ?? '';
    expect(text).toMatch(/label is the law/);
    expect(text).toMatch(/licensed applicator/);
    expect(text).toMatch(/local codes/);
  });
});

describe('regions', () => {
  it('are all those a plant may be native to, with a name each', () => {
    const codes = referenceRegions.map((region) => region.code);
    const used = new Set(referencePlants.flatMap((plant) => plant.facts.nativeRegions.value));
    expect([...used].filter((code) => !codes.includes(code))).toEqual([]);
    expect(new Set(referenceRegions.map((region) => region.name)).size).toBe(codes.length);
  });
});
