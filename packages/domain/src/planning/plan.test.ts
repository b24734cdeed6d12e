import { describe, expect, it } from 'vitest';
import { productionPlan } from './plan.ts';
import {
  demandOf,
  factsOf,
  known,
  noSolver,
  POT,
  protocolOf,
  sourceOf,
  stage,
  supplyOf,
  TRAY,
  trySolver,
  withStages,
} from './sample-facts.ts';

const plan = (more: Parameters<typeof factsOf>[0] = {}) => productionPlan(factsOf(more), noSolver);
const SPRING = { rules: [], windows: [{ id: 'W', opensMd: '04-15', closesMd: '06-15' }], freezeMd: '11-15' };

describe('what to start', () => {
  it('is the fewest whole trays that give what is missing, by the last day that is in time', async () => {
    const { lines, gaps, missingUnits, servedUnits } = await plan();
    // 30 plants at 0.72 and 0.8 sure take 45 cells of the binomial, so one tray of 50; 14 and 60 days before the first of June.
    expect({ gaps, missingUnits, servedUnits, count: lines.length }).toEqual({
      gaps: [],
      missingUnits: 30,
      servedUnits: 30,
      count: 1,
    });
    expect(lines[0]).toMatchObject({
      trays: 1,
      counted: 50,
      units: 50,
      plants: 30,
      startOn: '2027-03-19',
      targetOn: '2027-06-01',
      state: 'coming',
      share: 0.8 * 0.9,
      sourceId: 'S1',
      seeds: 100,
    });
    expect(lines[0]?.stages).toEqual([
      { kind: 'sowing', beginsOn: '2027-03-19' },
      { kind: 'emergence', beginsOn: '2027-03-19' },
      { kind: 'pricking-out', beginsOn: '2027-04-02' },
      { kind: 'growing-on', beginsOn: '2027-04-02' },
    ]);
  });
  it('takes seed, medium and bench space', async () => {
    const [line] = (await plan()).lines;
    expect(line?.grams).toBeCloseTo(100 / (250 * 0.8), 12);
    // 50 cells of 50 ml and 40 pots of a litre, of medium that packs down by 0.15.
    expect(line?.mediumLitres).toBeCloseTo((2.5 + 40) / 0.85, 9);
    expect(line).toMatchObject({ potted: 40, benchCm2: 4000, benchFromOn: '2027-03-15', benchUntilOn: '2027-06-06' });
  });
  it('covers trays from sowing and pots from pricking out until they are fetched', async () => {
    const { weeks } = await plan();
    const at = (startsOn: string) => weeks.find((week) => week.startsOn === startsOn)?.plannedCm2;
    expect([
      at('2027-03-08'),
      at('2027-03-15'),
      at('2027-03-22'),
      at('2027-03-29'),
      at('2027-05-31'),
      at('2027-06-07'),
    ]).toEqual([0, 1500, 1500, 4000, 4000, 0]);
  });
  it('is one batch for what begins in the same week, and names all it is for', async () => {
    const demands = [
      demandOf(),
      demandOf({ id: 'D2', rank: 2, on: '2027-06-03', units: 12 }),
      demandOf({ id: 'D3', rank: 3, on: '2027-07-01', units: 5 }),
    ];
    const { lines } = await plan({ demands });
    expect(lines.map(({ wantedFor, targetOn }) => [targetOn, wantedFor.map(({ demandId }) => demandId)])).toEqual([
      ['2027-06-01', ['D1', 'D2']],
      ['2027-07-01', ['D3']],
    ]);
  });
  it('is nothing where stock covers all', async () => {
    expect(await plan({ supplies: [supplyOf({ units: 30 })] })).toMatchObject({
      lines: [],
      tooLate: [],
      gaps: [],
      missingUnits: 0,
    });
  });
  it('aims at the first open day of the season for what is only expected, and at its own day for an order', async () => {
    const expected = demandOf({ id: 'E', kind: 'expected', rank: null, on: '2027-03-01' });
    const { lines } = await plan({
      demands: [expected, demandOf({ on: '2027-03-20' })],
      today: '2026-10-01',
      seasons: SPRING,
    });
    expect(lines.map(({ targetOn, window }) => [targetOn, window?.opensOn ?? null])).toEqual([
      ['2027-03-20', null],
      ['2027-04-15', '2027-04-15'],
    ]);
  });
  it('keeps each stage within its season', async () => {
    const protocols = [
      withStages([
        stage('sowing', 0, 1, { season: { fromMd: '11-01', toMd: '12-31' } }),
        stage('emergence', 14, 0.8),
        stage('growing-on', 60, 0.9),
      ]),
    ];
    expect((await plan({ protocols, today: '2026-10-01' })).lines[0]?.startOn).toBe('2026-12-31');
  });
  it('loses stratification in the cold no bench', async () => {
    const protocols = [
      withStages([
        stage('stratification', 60),
        stage('sowing', 0),
        stage('emergence', 14, 0.8),
        stage('growing-on', 60, 0.9),
      ]),
    ];
    const { lines } = await plan({ protocols, today: '2026-12-01' });
    expect(lines[0]).toMatchObject({ startOn: '2027-01-18', benchFromOn: '2027-03-15' });
  });
  it('counts pieces one by one where they stand in no tray', async () => {
    const protocols = [
      protocolOf({
        method: 'division',
        startUnit: 'piece',
        startContainerId: null,
        seedsPerCell: null,
        plan: { stages: [stage('rooting', 20, 0.9)], dormantMonths: [] },
        passing: known([{ kind: 'rooting', share: 0.9 }]),
      }),
    ];
    const { lines } = await plan({ protocols, sources: [sourceOf({ kind: 'mother-plants' })] });
    // 35 is the fewest of which 30 root at 0.9, eight times in ten.
    expect(lines[0]).toMatchObject({ unit: 'piece', units: 35, trays: null, seeds: null, grams: null });
  });
  it('refuses a confidence that is none', async () => {
    await expect(plan({ confidence: 0.4 })).rejects.toThrow(
      expect.objectContaining({ name: 'InputError', argument: 'confidence' }),
    );
  });
});

describe('what cannot be started', () => {
  const reasonOf = async (more: Parameters<typeof factsOf>[0]) =>
    (await plan(more)).gaps.map(({ reason, units }) => [reason, units]);
  it('has no protocol', async () => expect(await reasonOf({ protocols: [] })).toEqual([['no-protocol', 30]]));
  it('has a protocol by which nothing passes', async () =>
    expect(await reasonOf({ protocols: [withStages([stage('emergence', 14, 0)])] })).toEqual([['nothing-passes', 30]]));
  it('has no source', async () => expect(await reasonOf({ sources: [] })).toEqual([['no-source', 30]]));
  it('has no source of the zone that is asked for', async () => {
    expect(
      await reasonOf({
        demands: [demandOf({ seedZone: 'prairie north' })],
        sources: [sourceOf({ seedZone: 'prairie south' })],
      }),
    ).toEqual([['no-source', 30]]);
  });
  it('has no wild source where wild type is asked for', async () => {
    expect(
      await reasonOf({ demands: [demandOf({ wildType: true })], sources: [sourceOf({ origin: 'cultivated' })] }),
    ).toEqual([['no-source', 30]]);
  });
  it('has only seed that had to be sown fresh', async () =>
    expect(await reasonOf({ sources: [sourceOf({ sowFresh: true })] })).toEqual([['seed-not-fresh', 30]]));
  it('has no seed left', async () =>
    expect(await reasonOf({ sources: [sourceOf({ gramsLeft: 0 })] })).toEqual([['not-enough-seed', 30]]));
  it('has seed for some of it', async () => {
    const demands = [demandOf({ units: 60 })];
    const { lines, gaps } = await plan({ demands, sources: [sourceOf({ gramsLeft: 0.7 })] });
    const [line] = lines;
    // A tray takes half a gram, two would take a whole one.
    expect(line).toMatchObject({ trays: 1, grams: 0.5, gramsLeft: 0.7 });
    expect(gaps).toMatchObject([
      { reason: 'not-enough-seed', units: 60 - (line?.plants ?? 0), grams: { needed: 1, left: 0.7 } },
    ]);
  });
  it('leaves to a later batch what the first did not take of the seed', async () => {
    const demands = [demandOf(), demandOf({ id: 'D2', rank: 2, on: '2027-08-01' })];
    const { lines, gaps } = await plan({ demands, sources: [sourceOf({ gramsLeft: 0.9 })] });
    expect(lines.map(({ gramsLeft }) => gramsLeft)).toEqual([0.9]);
    expect(gaps).toMatchObject([{ demandId: 'D2', reason: 'not-enough-seed', grams: { needed: 0.5, left: 0 } }]);
  });
  it('takes another source where the best is used up', async () => {
    const sources = [
      sourceOf({ gramsLeft: 0.2, gatheredOn: '2026-10-01' }),
      sourceOf({ id: 'S2', code: 'S2', gramsLeft: 5 }),
    ];
    expect((await plan({ sources })).lines.map(({ sourceId }) => sourceId)).toEqual(['S2']);
  });
});

describe('the protocol that is chosen', () => {
  const slow = withStages([stage('sowing', 0), stage('emergence', 200, 0.9)], {
    versionId: 'V2',
    protocolId: 'R2',
    label: 'slow',
  });
  it('is one that is in time', async () =>
    expect((await plan({ protocols: [slow, protocolOf()] })).lines[0]?.versionId).toBe('V1'));
  it('is one for the container', async () => {
    expect(
      (
        await plan({
          protocols: [
            protocolOf({ targetContainerId: 'other' }),
            protocolOf({ versionId: 'V3', protocolId: 'R0', label: 'tall' }),
          ],
        })
      ).lines[0]?.versionId,
    ).toBe('V3');
  });
  it('is one that has a source', async () => {
    const cutting = protocolOf({ versionId: 'V4', protocolId: 'R4', method: 'cutting' });
    expect(
      (await plan({ protocols: [protocolOf(), cutting], sources: [sourceOf({ kind: 'mother-plants' })] })).lines[0]
        ?.versionId,
    ).toBe('V4');
  });
});

describe('pot life', () => {
  const rule = (basis: 'confined' | 'container', span: string) => ({
    rules: [{ id: 'R', basis, span, reach: { genus: 'Asclepias' } }],
    windows: [],
    freezeMd: '11-15',
  });
  it('is reckoned for the planned days', async () => {
    // Up on 2 April, a year later.
    expect((await plan({ seasons: rule('confined', 'P1Y') })).lines[0]?.potLife).toMatchObject({
      plantByOn: '2028-04-02',
      passes: false,
      notBeforeOn: null,
    });
  });
  it('says when a batch would be past its limit before its last day, and when to pot it instead', async () => {
    const demands = [demandOf(), demandOf({ id: 'D2', rank: 2, on: '2027-06-03' })];
    expect((await plan({ demands, seasons: rule('container', 'P60D') })).lines[0]?.potLife).toMatchObject({
      plantByOn: '2027-06-01',
      passes: true,
      notBeforeOn: '2027-04-04',
    });
  });
});

describe('bench space', () => {
  const two = (more: object = {}) => [
    demandOf({ id: 'D1', rank: 1, ...more }),
    demandOf({ id: 'D2', kind: 'expected', rank: null, plantId: 'P2', unitValue: 900 }),
    demandOf({ id: 'D3', kind: 'expected', rank: null, plantId: 'P3', unitValue: 500 }),
  ];
  const facts = (capacityCm2: number | null, demands = two()) =>
    factsOf({
      demands,
      protocols: ['P1', 'P2', 'P3'].map((plantId) =>
        protocolOf({ plantId, versionId: `V-${plantId}`, protocolId: `R-${plantId}` }),
      ),
      sources: ['P1', 'P2', 'P3'].map((plantId) => sourceOf({ id: `S-${plantId}`, plantId })),
      plants: ['P1', 'P2', 'P3'].map((id) => ({
        id,
        genus: 'Asclepias',
        rootHabit: 'taproot' as const,
        dormantMonths: [],
        isCultivar: false,
      })),
      space: { capacityCm2, standing: [] },
    });
  it('is not asked about where all of it fits', async () =>
    expect((await productionPlan(facts(12_000), noSolver)).lines).toHaveLength(3));
  it('is not asked about where nobody measured it', async () =>
    expect((await productionPlan(facts(null), noSolver)).lines).toHaveLength(3));
  it('goes to orders first and then to what is worth most', async () => {
    const { lines, gaps } = await productionPlan(facts(8000), trySolver);
    expect(lines.map(({ plantId }) => plantId).sort()).toEqual(['P1', 'P2']);
    expect(gaps).toMatchObject([{ demandId: 'D3', reason: 'no-space', units: 30 }]);
    expect(gaps[0]?.fullWeeks).toEqual([
      '2027-03-29',
      '2027-04-05',
      '2027-04-12',
      '2027-04-19',
      '2027-04-26',
      '2027-05-03',
      '2027-05-10',
      '2027-05-17',
      '2027-05-24',
      '2027-05-31',
    ]);
  });
  it('starts a part of a batch where only some trays fit', async () => {
    const { lines, gaps } = await productionPlan(facts(8000, [demandOf({ units: 90 })]), trySolver);
    expect(lines).toMatchObject([{ trays: 2, wantedUnits: 90 }]);
    expect(gaps).toMatchObject([{ reason: 'no-space', units: 90 - (lines[0]?.plants ?? 0) }]);
  });
  it('is taken by what stands already', async () => {
    const standing = [
      { id: 'L', now: null, potted: { containerId: 'pot', plants: 50, fromOn: '2027-01-15' }, plantByOn: null },
    ];
    const { lines, weeks } = await productionPlan(
      { ...facts(8000, [demandOf()]), space: { capacityCm2: 8000, standing } },
      trySolver,
    );
    expect(lines).toEqual([]);
    expect(weeks[0]).toEqual({ startsOn: '2027-01-11', standingCm2: 5000, plannedCm2: 0 });
  });
});

it('containers of the sample have the areas that the figures rest on', () =>
  expect([TRAY.footprintMm2, POT.footprintMm2]).toEqual([150_000, 10_000]));
