import { randomUUID } from 'node:crypto';
import { stock as stockContracts } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadScope } from '../../../apps/server/src/features/promises/allocation/load.ts';
import { query } from '../../../apps/server/src/trpc/operation.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { tries } from '../../support/tries.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await createDatabase();
});
afterAll(() => database.drop());

const PLACES = ['bench', 'frame'] as const;

/** One plant that is no host of larvae, so that a treatment holds nothing back and only what is known of it counts. */
async function treatedStory(nursery: TestNursery) {
  const story = await gardenStory(nursery);
  await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
  const { plantId, sourceId, containerId } = story;
  const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
  const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, cells: 72 });
  const places = { bench: story.placeId, frame: await story.addPlace({ code: 'FRAME', kind: 'cold-frame' }) };
  const { propagation, stock } = nursery.as('grower');

  const seed = { plantId, sourceId, method: 'seed' as const };
  async function packs(happenedOn = '2026-02-01') {
    const batchId = randomUUID();
    await propagation.startBatch(
      sent({ ...seed, batchId, unit: 'pack' as const, containerId: null, units: 6, placeId: places.frame, happenedOn }),
    );
    return batchId;
  }
  async function draw(packsId: string, happenedOn: string) {
    const batchId = randomUUID();
    const { entryId } = await propagation.startBatch(
      sent({
        ...seed,
        batchId,
        unit: 'cell' as const,
        containerId: trayId,
        units: 40,
        placeId: places.bench,
        fromPacks: { batchId: packsId, units: 1 },
        happenedOn,
        targetContainerId: containerId,
        cautiousUnits: 20,
        readyOn: '2026-05-20',
      }),
    );
    return { id: batchId, entryId };
  }
  async function pot(batchId: string, happenedOn: string, existing?: string) {
    const id = existing ?? randomUUID();
    const { entryId } = await propagation.potBatch(
      sent({
        batchId,
        happenedOn,
        firstAlive: '2026-04',
        lots: [
          {
            lotId: id,
            into: existing ? ('existing' as const) : ('new' as const),
            containerId,
            placeId: places.bench,
            unitsOut: 5,
            pottedUnits: 5,
          },
        ],
      }),
    );
    return { id, entryId };
  }
  async function relabel(kind: 'split' | 'pot-up', lotId: string, units: number, happenedOn: string) {
    const id = randomUUID();
    const from = { lotId, happenedOn };
    const { entryId } =
      kind === 'split'
        ? await stock.splitLot(sent({ ...from, into: [{ lotId: id, placeId: places.bench, units }] }))
        : await stock.potUpLot(
            sent({
              ...from,
              into: [{ lotId: id, containerId: bigId, placeId: places.bench, units, readyOn: happenedOn }],
            }),
          );
    return { id, entryId };
  }
  async function merge(lotIds: string[], happenedOn: string) {
    const id = randomUUID();
    const { entryId } = await stock.mergeLots(sent({ lotIds, into: { lotId: id, placeId: places.bench }, happenedOn }));
    return { id, entryId };
  }
  const applied = (day: string) => ({
    product: `Soap ${randomUUID().slice(0, 4)}`,
    applicator: 'Robin',
    treatedAt: `${day}T17:00:00Z`,
  });
  const treat = (lotId: string, day: string) => stock.treatLots(sent({ lotIds: [lotId], ...applied(day) }));
  const treatPlace = (place: (typeof PLACES)[number], day: string) =>
    stock.treatPlace(sent({ placeId: places[place], ...applied(day) }));
  const move = (lotId: string) => stock.moveLot(sent({ lotId, toPlaceId: places.frame, happenedOn: '2026-05-20' }));
  const undo = (entryId: string) => stock.reverseEntry(sent({ entryId }));

  const judged = query({
    name: 'judgedTreated',
    input: stockContracts.listPlaces,
    roles: EVERYONE,
    read: async (context) =>
      (
        await loadScope(context, {
          items: [containerId, bigId].map((id) => ({ plantId, containerId: id })),
          asksTreatments: true,
        })
      ).supplies,
  });

  /** Of every lot and batch that can be promised, what each reader says of it. */
  async function answers() {
    const supplies = await nursery.runner.read(judged, nursery.people.viewer, { retired: false });
    return Promise.all(
      supplies.map(async ({ id, kind, code, treated }) => {
        const page =
          kind === 'lot'
            ? (await stock.readLot({ lotId: id })).treatments
            : (await propagation.readBatch({ batchId: id })).treatments;
        return { code, judging: treated, page: page.length > 0 };
      }),
    );
  }
  const treatedOf = async (id: string) =>
    (await nursery.runner.read(judged, nursery.people.viewer, { retired: false })).find((supply) => supply.id === id)
      ?.treated;

  return { ...story, packs, draw, pot, relabel, merge, treat, treatPlace, move, undo, answers, treatedOf };
}

type Story = Awaited<ReturnType<typeof treatedStory>>;
const alike = async (story: Story) => {
  const answers = await story.answers();
  return {
    judging: answers.map(({ code, judging }) => `${code} ${judging}`),
    page: answers.map(({ code, page }) => `${code} ${page}`),
  };
};

async function inStory(work: (story: Story, nursery: TestNursery) => Promise<void>): Promise<void> {
  const nursery = await openNursery(database);
  try {
    await work(await treatedStory(nursery), nursery);
  } finally {
    await nursery.close();
  }
}

describe('what was treated', () => {
  it('is not what came of a batch before, though a later potting into it was taken back', () =>
    inStory(async (story) => {
      const { id: batchId } = await story.draw(await story.packs(), '2026-03-01');
      const { id: lotId } = await story.pot(batchId, '2026-05-14');
      const { entryId } = await story.pot(batchId, '2026-05-18', lotId);
      await story.undo(entryId);
      await story.move(lotId);
      await story.treatPlace('bench', '2026-05-16');
      expect(await story.treatedOf(lotId)).toBe(false);
      const { judging, page } = await alike(story);
      expect(judging).toEqual(page);
    }));

  it('is what grows of treated packs, on the page of the batch as well', () =>
    inStory(async (story) => {
      const packsId = await story.packs();
      await story.treatPlace('frame', '2026-02-10');
      const { id } = await story.draw(packsId, '2026-03-01');
      expect(await story.treatedOf(id)).toBe(true);
      const { judging, page } = await alike(story);
      expect(page).toEqual(judging);
    }));

  it('is what was treated under another label, when that label is taken back', () =>
    inStory(async (story) => {
      const lots = [await story.addLot({ units: 10 }), await story.addLot({ units: 10 })];
      const merged = await story.merge(lots, '2026-05-10');
      await story.treat(merged.id, '2026-05-12');
      await story.undo(merged.entryId);
      for (const lotId of lots) expect(await story.treatedOf(lotId)).toBe(true);
      const { judging, page } = await alike(story);
      expect(page).toEqual(judging);
    }));

  it('holds back what is potted of a host of larvae from treated packs', () =>
    inStory(async (story, nursery) => {
      await nursery.sql('UPDATE plant SET larval_host = true WHERE nursery_id = $1', [nursery.nurseryId]);
      const packsId = await story.packs();
      await story.treatPlace('frame', '2026-02-10');
      const { id: lotId } = await story.pot((await story.draw(packsId, '2026-03-01')).id, '2026-05-14');
      expect((await nursery.as('grower').stock.readLot({ lotId })).holds).toMatchObject([{ reason: 'treated' }]);
    }));
});

type Step =
  | { kind: 'split' | 'pot-up' | 'merge' | 'treat'; lot: number; other: number; day: number }
  | { kind: 'pot'; batch: number; into: number | null; day: number }
  | { kind: 'draw' | 'undo'; batch: number; day: number }
  | { kind: 'treat-place'; place: (typeof PLACES)[number]; day: number };

const which = fc.nat({ max: 7 });
const day = fc.integer({ min: 14, max: 20 });
const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    {
      weight: 5,
      arbitrary: fc.record({
        kind: fc.constantFrom('split' as const, 'pot-up' as const, 'merge' as const, 'treat' as const),
        lot: which,
        other: which,
        day,
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({ kind: fc.constant('pot' as const), batch: which, into: fc.option(which), day }),
    },
    { weight: 3, arbitrary: fc.record({ kind: fc.constantFrom('draw' as const, 'undo' as const), batch: which, day }) },
    {
      weight: 2,
      arbitrary: fc.record({ kind: fc.constant('treat-place' as const), place: fc.constantFrom(...PLACES), day }),
    },
  ),
  { minLength: 8, maxLength: 16 },
);

describe('every reader of treatments', () => {
  const dayOf = (number: number) => `2026-05-${number}`;
  const at = <Row>(rows: readonly Row[], number: number): Row => rows[number % rows.length] as Row;

  /** Refusals are part of any course; every other error fails the test. */
  async function tried<Done>(work: Promise<Done>): Promise<Done | null> {
    try {
      return await work;
    } catch (error) {
      const code = (error as { cause?: { code?: string } }).cause?.code;
      if (!code || code === 'fault') throw error;
      return null;
    }
  }

  async function doStep(
    story: Story,
    course: { lots: string[]; batches: string[]; packsId: string; done: string[] },
    step: Step,
  ): Promise<void> {
    const { lots, batches, packsId, done } = course;
    const on = dayOf(step.day);
    const add = (list: string[], made: { id?: string; entryId: string } | null) => {
      if (!made) return;
      done.push(made.entryId);
      if (made.id && !list.includes(made.id)) list.unshift(made.id);
    };
    switch (step.kind) {
      case 'undo': {
        const entryId = done.at(-1 - (step.batch % 3));
        if (entryId) await tried(story.undo(entryId));
        return;
      }
      case 'treat-place':
        return add([], await tried(story.treatPlace(step.place, on)));
      case 'treat':
        return add([], await tried(story.treat(at(lots, step.lot), on)));
      case 'draw':
        return add(batches, await tried(story.draw(packsId, on)));
      case 'merge':
        return add(lots, await tried(story.merge([at(lots, step.lot), at(lots, step.other)], on)));
      case 'pot':
        return add(
          lots,
          await tried(story.pot(at(batches, step.batch), on, step.into === null ? undefined : at(lots, step.into))),
        );
      default:
        return add(lots, await tried(story.relabel(step.kind, at(lots, step.lot), 1 + step.other, on)));
    }
  }

  it('answers alike, whatever was split, merged, potted, drawn, treated and taken back, on whatever days', async () => {
    const round = tries(10, 20_261_130);
    let [treated, untreated] = [0, 0];
    await fc.assert(
      fc.asyncProperty(steps, (course) =>
        inStory(async (story) => {
          const packsId = await story.packs();
          const { id: batchId } = await story.draw(packsId, '2026-03-01');
          const drawn = {
            lots: [(await story.pot(batchId, '2026-05-14')).id, await story.addLot({ units: 20 })],
            batches: [batchId],
            packsId,
            done: [] as string[],
          };
          for (const step of course) await doStep(story, drawn, step);
          const { judging, page } = await alike(story);
          expect(page).toEqual(judging);
          treated += judging.filter((row) => row.endsWith('true')).length;
          untreated += judging.filter((row) => row.endsWith('false')).length;
        }),
      ),
      round,
    );
    expect({ treated: treated > round.numRuns, untreated: untreated > round.numRuns }).toEqual({
      treated: true,
      untreated: true,
    });
  }, 240_000);
});
