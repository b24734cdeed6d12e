import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { checkLaws } from '../../apps/server/src/db/check.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { openServer } from '../support/nursery.ts';
import { tries } from '../support/tries.ts';
import { beginStage, countPacks, drawPacks, STAGE_DAYS, startPacks } from './batch-steps.ts';
import type { Item } from './ledger.ts';
import { addLine, cancel, changeDay, DUE_DAYS, issue, order, pin, withdraw } from './order-steps.ts';
import { giveBack, plant, pull } from './planting-steps.ts';
import { divide, merge, potUp, split } from './relabel-steps.ts';
import { putIn, takeOut, takeSeedBack, weighOut } from './seed-steps.ts';
import { type Planner, Step } from './step.ts';
import { count, hold, lose, move, type Reason, receive, release, reverse, sell } from './stock-steps.ts';
import { countSpring } from './winter-steps.ts';
import { openWorld } from './world.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const which = fc.nat({ max: 7 });
/** Mostly the first place, where plants stand if they stand anywhere. */
const where = fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat({ max: 3 }) });
const anyPlace = fc.nat({ max: 3 });
const few = fc.integer({ min: 1, max: 9 });
const units = fc.integer({ min: 1, max: 30 });
const item = fc.constantFrom<Item>('small', 'small', 'big');
const oneInFive = fc.nat({ max: 4 }).map((number) => number === 0);
const reason = fc.constantFrom<Reason>('inspector', 'quarantine');
const day = fc.nat({ max: DUE_DAYS.length - 1 });
const stageBegun = fc.record({
  batch: which,
  position: fc.nat({ max: 3 }),
  day: fc.nat({ max: STAGE_DAYS.length - 1 }),
});

const step = <Choice>(name: string, planner: Planner<Choice>, choice: fc.Arbitrary<Choice>) =>
  choice.map((each) => new Step(name, planner, each));

const received = step(
  'receive',
  receive,
  fc.record({ place: fc.nat({ max: 2 }), units: fc.integer({ min: 10, max: 30 }), quarantine: oneInFive }),
);
const ordered = step('order', order, fc.record({ item, units, day }));

// The commands are drawn evenly from a list, so what a course is made of must stand in it more often.
const steps = [
  received,
  ordered,
  ordered,
  ordered,
  step('receive', receive, fc.record({ place: anyPlace, units, quarantine: fc.constant(false) })),
  step('pot up', potUp, fc.record({ lot: which, place: where, units: few, to: anyPlace })),
  step('pot up', potUp, fc.record({ lot: which, place: where, units, to: anyPlace })),
  step('split', split, fc.record({ lot: which, place: where, units: few, to: anyPlace })),
  step('divide', divide, fc.record({ lot: which, place: where, units: few, to: anyPlace })),
  step('merge', merge, fc.record({ lot: which, other: which, to: fc.option(anyPlace) })),
  step('move', move, fc.record({ lot: which, place: where, units, to: anyPlace })),
  step('lose', lose, fc.record({ lot: which, place: where, units })),
  step('count', count, fc.record({ lot: which, place: where, units })),
  step(
    'count in spring',
    countSpring,
    fc.record({
      lot: which,
      place: where,
      dead: fc.nat({ max: 6 }),
      notUp: fc.nat({ max: 6 }),
      off: fc.oneof(
        { weight: 3, arbitrary: fc.constant(0) },
        { weight: 1, arbitrary: fc.integer({ min: -8, max: 8 }) },
      ),
      book: fc.boolean(),
    }),
  ),
  step('hold', hold, fc.record({ lot: which, reason })),
  step('release', release, fc.record({ lot: which, reason })),
  step('sell', sell, fc.record({ lot: which, place: where, units: few })),
  step('add line', addLine, fc.record({ order: which, item, units })),
  step('change day', changeDay, fc.record({ order: which, day })),
  step('withdraw', withdraw, fc.record({ line: which })),
  step('pin', pin, fc.record({ line: which, lot: where, units: few })),
  step('pin', pin, fc.record({ line: where, lot: where, units: few })),
  step('issue', issue, fc.record({ order: which })),
  step('pull', pull, fc.record({ line: which, lot: which, place: where, units: few })),
  step('pull', pull, fc.record({ line: where, lot: where, place: where, units: few })),
  step('pull', pull, fc.record({ line: where, lot: where, place: where, units: few })),
  step('plant', plant, fc.record({ pair: which, units: fc.integer({ min: 1, max: 3 }), extra: fc.constant(null) })),
  step(
    'plant',
    plant,
    fc.record({ pair: which, units: few, extra: fc.option(fc.record({ place: where, units: few })) }),
  ),
  step(
    'return',
    giveBack,
    fc.record({ pair: which, returned: fc.nat({ max: 6 }), lost: fc.nat({ max: 3 }), place: fc.option(anyPlace) }),
  ),
  step('cancel', cancel, fc.record({ order: which, place: anyPlace })),
  step('start packs', startPacks, fc.record({ place: anyPlace, units: few })),
  step('draw packs', drawPacks, fc.record({ batch: where, packs: fc.nat({ max: 5 }), units, to: anyPlace })),
  step('draw packs', drawPacks, fc.record({ batch: which, packs: fc.nat({ max: 5 }), units, to: anyPlace })),
  step('begin stage', beginStage, stageBegun),
  step('begin stage', beginStage, stageBegun),
  step(
    'count packs',
    countPacks,
    fc.record({ batch: where, alive: fc.nat({ max: 4 }), day: fc.nat({ max: STAGE_DAYS.length - 2 }) }),
  ),
  step('put seed in', putIn, fc.record({ grams: few })),
  step('take seed out', takeOut, fc.record({ grams: few })),
  step('weigh seed', weighOut, fc.record({ grams: fc.nat({ max: 12 }) })),
  step('take seed back', takeSeedBack, fc.record({ booking: where })),
  step('reverse', reverse, fc.record({ entry: where })),
  step('reverse', reverse, fc.record({ entry: which })),
];

// Much can be done only where something stands, is asked for and is pulled, so each course begins with a little of it.
const beginning = fc.tuple(
  received,
  received,
  ordered,
  step('start packs', startPacks, fc.record({ place: anyPlace, units: few })),
  step('pot up', potUp, fc.record({ lot: fc.nat({ max: 1 }), place: fc.constant(0), units: few, to: anyPlace })),
  step('order', order, fc.record({ item: fc.constant<Item>('big'), units: few, day: fc.constant(0) })),
  step(
    'pull',
    pull,
    fc.record({
      line: fc.nat({ max: 1 }),
      lot: fc.constant(0),
      place: fc.constant(0),
      units: fc.integer({ min: 2, max: 6 }),
    }),
  ),
  // Two lots tied to one line, which the next step often makes one lot.
  step('pin', pin, fc.record({ line: fc.constant(0), lot: fc.constant(0), units: few })),
  step('pin', pin, fc.record({ line: fc.constant(0), lot: fc.constant(1), units: few })),
  step('merge', merge, fc.record({ lot: fc.nat({ max: 1 }), other: fc.nat({ max: 1 }), to: fc.option(anyPlace) })),
);

const round = tries(60);

it('the nursery does what the model does, whatever is done in whatever order', async () => {
  await fc.assert(
    fc.asyncProperty(beginning, fc.commands(steps, { maxCommands: 12, size: 'max' }), async (first, rest) => {
      const world = await openWorld(server);
      const setup = () => ({ model: world.ledger, real: world });
      await fc.asyncModelRun(setup, [...first, ...rest]);
      await world.compareScreens(world.ledger);
    }),
    round,
  );

  const { breaches, looked } = await checkLaws(database.ownerUrl);
  expect(breaches).toEqual([]);
  expect(looked.nurseries).toBeGreaterThanOrEqual(round.numRuns);
}, 600_000);
