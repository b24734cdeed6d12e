import { randomUUID } from 'node:crypto';
import type { BodyOf } from '../../../apps/server/src/trpc/operation.ts';
import type { addProtocol } from '../../../apps/server/src/features/propagation/protocols/commands/add-protocol.ts';
import { sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

type Content = Omit<
  BodyOf<typeof addProtocol>,
  'protocolId' | 'versionId' | 'plantId' | 'method' | 'label' | 'changeNote'
>;
type StageBody = Content['stages'][number];

export const stage = (kind: StageBody['kind'], more: Partial<StageBody> = {}): StageBody => ({
  kind,
  shortDays: 7,
  usualDays: 14,
  longDays: 28,
  share: 0.8,
  ...more,
});

export const content = (more: Partial<Content> = {}): Content => ({
  startUnit: 'cell',
  stages: [
    stage('stratification', { shortDays: 30, usualDays: 30, longDays: 60, share: 1 }),
    stage('sowing', { shortDays: 0, usualDays: 0, longDays: 0, share: 1 }),
    stage('emergence'),
    stage('growing-on', { rests: true }),
  ],
  ...more,
});

/** A plant with a protocol from seed, and what a test asks of them. */
export async function protocolOf(nursery: TestNursery, more: Partial<Content> = {}) {
  const unique = randomUUID().slice(0, 8);
  const plantId = await stockOf(nursery).addPlant({
    name: `Monarda proba-${unique}`,
    code: [...unique]
      .slice(0, 4)
      .map((digit) => String.fromCharCode(65 + Number.parseInt(digit, 16)))
      .join(''),
  });
  const protocolId = randomUUID();
  const versionId = randomUUID();
  await nursery
    .as('grower')
    .propagation.addProtocol(sent({ protocolId, versionId, plantId, method: 'seed' as const, ...content(more) }));
  return { plantId, protocolId, versionId };
}
