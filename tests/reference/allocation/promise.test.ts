// A promise starts from lines that are filled already; here it is held against an allocation with the new line from scratch, day by day.
import {
  addDays,
  allocate,
  type AllocationInstance,
  explainShortage,
  promise,
  type PromiseAsk,
} from '@rootclock/domain';
import { describe, expect, it } from 'vitest';
import { streamOf } from '../../bench/load/chance.ts';
import { drawInstance, type Shape, SMALL } from '../../support/allocation/draw-instance.ts';

const SEED = 20_261_201;
const COUNT = 500;
/** Few items, so that nearly all hangs together. */
const LINKED: Shape = { rows: 9, units: 12, items: 2 };
/** Behind 'D1' to 'D9' by its id, as the line of a promise is. */
const ID = 'ask';
const DAYS_AFTER = 40;

type Ask = Required<PromiseAsk>;
const TODAY = drawInstance(SEED, 0, SMALL).today;

function drawAsk({ supply }: AllocationInstance, number: number): Ask {
  const chance = streamOf(SEED, 'asks', number);
  const items = [...new Set(supply.map(({ item }) => item))];
  const accepted = items.filter(() => chance.share() < 0.7);
  return {
    accepts: (accepted.length > 0 ? accepted : items).map((item) => ({ item, penalty: chance.whole(0, 3) })),
    refuses: supply.filter(() => chance.share() < 0.1).map(({ id }) => id),
    leaveBy: new Map(
      supply.filter(() => chance.share() < 0.2).map(({ id }) => [id, addDays(TODAY, chance.whole(0, 20))]),
    ),
    units: chance.whole(1, chance.share() < 0.5 ? 6 : 30),
    on: addDays(TODAY, chance.whole(0, 20)),
  };
}

function fromScratch(instance: AllocationInstance, ask: Ask, on = ask.on) {
  const line = { id: ID, rank: 1 + Math.max(...instance.demand.map(({ rank }) => rank)), on, units: ask.units };
  const asked = { ...line, accepts: ask.accepts, refuses: ask.refuses };
  const gone = instance.supply.filter(({ id }) => (ask.leaveBy.get(id) ?? on) < on);
  // A day to leave by stands for the plant-by day, and may be the later one; a demand knows plant-by days only.
  const isLater = ({ id, plantByOn }: { id: string; plantByOn: string | null }) =>
    plantByOn !== null && (ask.leaveBy.get(id) ?? plantByOn) > plantByOn;
  if (instance.supply.some(isLater)) throw new Error('a lot may leave after its plant-by day');
  const answer = allocate({
    ...instance,
    demand: [...instance.demand, { ...asked, refuses: [...ask.refuses, ...gone.map(({ id }) => id)] }],
  });
  const from = answer.assignments.filter(({ demand }) => demand === ID).map(({ supply, units }) => ({ supply, units }));
  const explained = explainShortage({ ...instance, demand: [...instance.demand, asked] }, ID, answer);
  const { unservedUnits, promisedToOthers, promisedToOthersUnits } = explained;
  return {
    units: from.reduce((sum, { units }) => sum + units, 0),
    from,
    inTheWay: { unservedUnits, promisedToOthers, promisedToOthersUnits },
  };
}

const cases = (shape: Shape) =>
  Array.from({ length: COUNT }, (_, number) => {
    const instance = drawInstance(SEED, number, shape);
    const drawn = drawAsk(instance, number);
    const plantBy = new Map(instance.supply.map(({ id, plantByOn }) => [id, plantByOn]));
    const leaveBy = new Map([...drawn.leaveBy].filter(([id, day]) => day <= (plantBy.get(id) ?? day)));
    return { number, instance, ask: { ...drawn, leaveBy } };
  });

describe.each([
  ['up to 6 lots and 6 lines', SMALL],
  ['up to 9 linked lots and lines', LINKED],
] as const)('a promise beside %s', (_, shape) => {
  it('gives what an allocation with the line gives, from the same plants, and names the same that stand in the way', () => {
    let short = 0;
    const differing = cases(shape).filter(({ instance, ask }) => {
      const { units, from, inTheWay } = promise(instance, ask);
      if (units > 0 && units < ask.units) short += 1;
      return JSON.stringify({ units, from, inTheWay }) !== JSON.stringify(fromScratch(instance, ask));
    });
    expect(differing.map(({ number }) => number)).toEqual([]);
    expect(short).toBeGreaterThan(COUNT / 20);
  }, 120_000);

  it('names the nearest days on which an allocation with the line fills it', () => {
    let moved = 0;
    const differing = cases(shape)
      .slice(0, COUNT / 5)
      .filter(({ instance, ask }) => {
        const { firstOn, lastBeforeOn } = promise(instance, ask);
        const isMet = (on: string) => fromScratch(instance, ask, on).units === ask.units;
        const after = Array.from({ length: DAYS_AFTER }, (__, days) => addDays(ask.on, days)).find(isMet) ?? null;
        if (firstOn !== after) return true;
        // Where the day asked for will do, the last day before on which plants leave is told, and not simply the day before.
        if (firstOn === ask.on) return lastBeforeOn !== null && !isMet(lastBeforeOn);
        if (firstOn !== null || lastBeforeOn !== null) moved += 1;
        let before: string | null = addDays(ask.on, -1);
        while (before >= instance.today && !isMet(before)) before = addDays(before, -1);
        return lastBeforeOn !== (before >= instance.today ? before : null);
      });
    expect(differing.map(({ number }) => number)).toEqual([]);
    expect(moved).toBeGreaterThan(COUNT / 100);
  }, 120_000);
});
