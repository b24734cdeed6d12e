import { randomUUID } from 'node:crypto';
import { sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

export const TODAY = '2026-05-20';

/** Sources of seed with something in their stores, and short ways to book; everything goes through the real procedures. */
export function seedOf(nursery: TestNursery) {
  const stock = stockOf(nursery);
  const crew = nursery.as('crew').sources;
  let plants = 0;

  /** A plant of its own, so that tests do not meet each other's sources. */
  async function plant() {
    plants += 1;
    const letter = String.fromCharCode(65 + (plants % 26));
    return stock.addPlant({
      name: `Liatris proba-${plants}`,
      code: `L${String.fromCharCode(65 + Math.floor(plants / 26))}${letter}${letter}`,
    });
  }

  type Fields = Partial<Parameters<typeof crew.addSource>[0]['body']>;
  const add = async (fields: Fields = {}) =>
    (
      await crew.addSource(
        sent({
          sourceId: randomUUID(),
          plantId: fields.plantId ?? (await plant()),
          kind: 'seed-collection',
          ...fields,
        }),
      )
    ).sourceId;
  /** A source with so much clean seed in its store. */
  const stored = (grams: number, fields: Fields = {}) => add({ cleanedGrams: grams, ...fields });

  const receive = (
    sourceId: string,
    grams: number,
    more: { kind?: 'gathered' | 'bought' | 'cleaned'; happenedOn?: string } = {},
  ) => crew.receiveSeed(sent({ sourceId, kind: 'cleaned' as const, grams, happenedOn: TODAY, ...more }));
  const take = (sourceId: string, grams: number, happenedOn = TODAY) =>
    crew.takeSeed(sent({ sourceId, reason: 'given' as const, grams, happenedOn }));
  const weigh = (sourceId: string, grams: number, happenedOn = TODAY) =>
    crew.weighSeed(sent({ sourceId, grams, happenedOn }));
  const blend = (parts: { sourceId: string; grams: number }[], sourceId: string = randomUUID()) =>
    crew.blendSources(sent({ sourceId, parts, happenedOn: TODAY }));
  const test = (
    sourceId: string,
    replicates: number[],
    more: {
      testedOn?: string;
      seedsPerReplicate?: number;
      hardShare?: number;
      dormantShare?: number;
      testId?: string;
    } = {},
  ) =>
    crew.recordViabilityTest(
      sent({
        testId: randomUUID(),
        sourceId,
        testedOn: TODAY,
        method: 'germination' as const,
        seedsPerReplicate: 100,
        replicates,
        ...more,
      }),
    );
  const takeBack = (movementId: string, role: 'crew' | 'grower' = 'crew') =>
    nursery.as(role).sources.takeBackSeed(sent({ movementId }));

  const read = (sourceId: string) => nursery.as('viewer').sources.readSource({ sourceId });
  const seed = async (sourceId: string) => {
    const { seed: facts } = await read(sourceId);
    if (!facts) throw new Error('the source holds no seed');
    return facts;
  };
  const left = async (sourceId: string) => (await seed(sourceId)).gramsLeft;

  return { stock, plant, add, stored, receive, take, weigh, blend, test, takeBack, read, seed, left };
}
