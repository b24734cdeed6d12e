import {
  InputError,
  requireProtocolPlan,
  shareReady,
  STAGE_KINDS,
  stagesForMethod,
  UNITS_FOR_METHOD,
} from '@rootclock/domain';
import {
  referenceContainers,
  referencePlants,
  type ReferenceProtocol,
  referenceProtocols,
} from '@rootclock/server/reference/index';
import { describe, expect, it } from 'vitest';

/*
 * Figures that are printed somewhere, each with where. Everything else of the reference protocols is assumed, remembered or common
 * practice, and must say so.
 */
const named = (code: string, method = 'seed'): ReferenceProtocol => {
  const found = referenceProtocols.find((protocol) => protocol.plantCode === code && protocol.method === method);
  if (found === undefined) throw new Error(`${code} has no reference protocol for ${method}`);
  return found;
};
const stageOf = (code: string, kind: (typeof STAGE_KINDS)[number], method = 'seed') => {
  const found = named(code, method).stages.find((stage) => stage.kind === kind);
  if (found === undefined) throw new Error(`${code} has no stage ${kind}`);
  return found;
};

describe('published figures', () => {
  it('Asclepias incarnata: cold and moist for 7 days at least (Native Plant Network protocol 1488)', () => {
    expect(stageOf('ASIN', 'stratification')).toMatchObject({
      shortDays: 7,
      durationStanding: 'confirmed',
      durationSource: expect.stringContaining('1488'),
    });
  });
  it('Asclepias syriaca: 30 days (Native Plant Network 1489); one week gave 75.3 percent (Baskin & Baskin 1977)', () => {
    expect(stageOf('ASSY', 'stratification')).toMatchObject({
      shortDays: 30,
      usualDays: 30,
      durationStanding: 'confirmed',
      durationSource: expect.stringContaining('1489'),
    });
    expect(stageOf('ASSY', 'emergence')).toMatchObject({
      share: 0.753,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('Baskin & Baskin 1977'),
    });
  });
  it('Echinacea pallida: 60 to 90 days, 50 to 81 percent, 2 years in a cone (Native Plant Network, T. Luna)', () => {
    expect(stageOf('ECPA', 'stratification')).toMatchObject({
      shortDays: 60,
      longDays: 90,
      durationStanding: 'confirmed',
      temperatureLowC: 1,
      temperatureHighC: 3,
      durationSource: expect.stringContaining('T. Luna'),
    });
    const up = stageOf('ECPA', 'emergence');
    expect(up).toMatchObject({
      share: 0.655,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('50 to 81 percent'),
    });
    const inPot = named('ECPA')
      .stages.filter(({ kind }) => kind !== 'stratification')
      .reduce((days, { usualDays }) => days + usualDays, 0);
    expect(inPot).toBe(Math.round(24 * 30.4375));
    expect(stageOf('ECPA', 'growing-on')).toMatchObject({
      durationStanding: 'derived',
      durationSource: expect.stringContaining('T. Luna'),
    });
  });
  it('Monarda fistulosa: 30 days, 87 percent, 6 months (Native Plant Network 95)', () => {
    expect(stageOf('MOFI', 'stratification')).toMatchObject({
      shortDays: 30,
      longDays: 30,
      durationStanding: 'confirmed',
      durationSource: expect.stringContaining('95'),
    });
    expect(stageOf('MOFI', 'emergence')).toMatchObject({
      share: 0.87,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('95'),
    });
    const fromSowing = named('MOFI')
      .stages.filter(({ kind }) => kind !== 'stratification')
      .reduce((days, { usualDays }) => days + usualDays, 0);
    expect(fromSowing).toBe(Math.round(6 * 30.4375));
  });
  it('Lupinus perennis: under 15 percent of intact seed, about 90 after scarification, no cold (J. Environ. Hort. 14(4):167)', () => {
    expect(
      named('LUPE')
        .stages.map(({ kind }) => kind)
        .slice(0, 2),
    ).toEqual(['scarification', 'sowing']);
    expect(stageOf('LUPE', 'scarification').note).toContain('Under 15 percent');
    expect(stageOf('LUPE', 'emergence')).toMatchObject({
      share: 0.9,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('14(4):167'),
      temperatureLowC: 21,
      temperatureHighC: 29,
    });
  });
  it('Asclepias speciosa: roots stored at 0.5 to 2 °C lived up to 90 percent (Topping, Dumroese & Pinto 2019)', () => {
    expect(stageOf('ASSP', 'stratification', 'root-cutting')).toMatchObject({
      temperatureLowC: 0.5,
      temperatureHighC: 2,
      share: 0.9,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('Topping'),
    });
  });
  it('Liatris pycnostachya: 105 days, then 33/19 °C (Native Plant Network, Baskin & Baskin 2002)', () => {
    expect(stageOf('LIPY', 'stratification')).toMatchObject({ usualDays: 105, durationStanding: 'confirmed' });
    expect(stageOf('LIPY', 'emergence')).toMatchObject({ temperatureLowC: 19, temperatureHighC: 33 });
  });
  it('Liatris aspera and Rudbeckia hirta: no cold, and the middle of three lots of the latter, 87 percent', () => {
    expect(
      [named('LIAS'), named('RUHI')].flatMap(({ stages }) => stages).filter(({ kind }) => kind === 'stratification'),
    ).toEqual([]);
    expect(stageOf('RUHI', 'emergence')).toMatchObject({
      share: 0.87,
      shareStanding: 'confirmed',
      shareSource: expect.stringContaining('22, 87 and 90'),
    });
  });
});

describe('every reference protocol', () => {
  const sourced = new Set(['confirmed', 'confirmed-vendor', 'derived']);
  it.each(referenceProtocols.map((protocol) => [`${protocol.plantCode} by ${protocol.method}`, protocol] as const))(
    '%s is a plan whose figures say what they rest on',
    (_, protocol) => {
      const plan = { stages: protocol.stages, dormantMonths: [] };
      expect(() => requireProtocolPlan(plan)).not.toThrow(InputError);
      expect(shareReady(plan)).toBeGreaterThan(0.2);
      expect(protocol.stages.every(({ kind }) => stagesForMethod(protocol.method).includes(kind))).toBe(true);
      expect(UNITS_FOR_METHOD[protocol.method]).toContain(protocol.startUnit);
      expect(protocol.stages[protocol.stages.length - 1]?.kind).toBe('ready');
      for (const { durationStanding, durationSource, shareStanding, shareSource } of protocol.stages) {
        expect(sourced.has(durationStanding)).toBe(durationSource !== null);
        expect(sourced.has(shareStanding)).toBe(shareSource !== null);
      }
      for (const code of [protocol.startContainerCode, protocol.targetContainerCode])
        if (code !== null) expect(referenceContainers.map((container) => container.code)).toContain(code);
      expect(Object.values(protocol.texts).every((text) => text.length <= 2000)).toBe(true);
    },
  );

  it('there is one for every plant, by each method its facts name and once', () => {
    const keys = referenceProtocols.map(({ plantCode, method }) => `${plantCode}/${method}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(referenceProtocols.map(({ plantCode }) => plantCode))).toEqual(
      new Set(referencePlants.map(({ code }) => code)),
    );
    const methods = (name: string) =>
      referenceProtocols
        .filter(({ plantCode }) => referencePlants.find(({ code }) => code === plantCode)?.scientificName === name)
        .map(({ method }) => method);
    expect(methods('Asclepias tuberosa')).toEqual(['seed', 'cutting', 'root-cutting']);
    expect(methods('Asclepias syriaca')).toEqual(['seed', 'division']);
    expect(methods('Ceanothus americanus')).toEqual(['seed', 'cutting']);
    expect(methods('Asclepias speciosa')).toEqual(['seed', 'root-cutting', 'division']);
  });
});
