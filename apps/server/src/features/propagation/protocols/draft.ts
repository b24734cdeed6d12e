import type { propagation } from '@rootclock/contracts';
import {
  containersForUnit,
  InputError,
  type PropagationMethod,
  requireProtocolPlan,
  type StageDetail,
  type StagePlan,
  stagesForMethod,
  UNITS_FOR_METHOD,
} from '@rootclock/domain';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadContainer } from '../batches/store.ts';

/** What a version says, as it is sent. */
type Sent = Pick<
  z.output<typeof propagation.addProtocol>,
  'startUnit' | 'startContainerId' | 'targetContainerId' | 'seedsPerCell' | 'stages' | 'texts'
>;

/** What a version says, as it is kept. */
export interface ProtocolContent extends Omit<Sent, 'stages'> {
  stages: StageDetail[];
}

/** As fine as a share is kept, so that a version which was only read and sent back differs in nothing. */
const kept = (value: number, digits: number) => Number(value.toFixed(digits));
const keptDegrees = (value: number | null) => (value === null ? null : kept(value, 1));

/**
 * What a plant's protocol for a method would say, or a refusal that names the field: lengths and stages out of order, stages of another method,
 * temperatures, units and containers that do not go together, containers that are not this nursery's.
 */
export async function draftContent(
  context: ReadContext,
  method: PropagationMethod,
  dormantMonths: readonly number[],
  sent: Sent,
): Promise<ProtocolContent> {
  const content: ProtocolContent = {
    startUnit: sent.startUnit,
    startContainerId: sent.startContainerId,
    targetContainerId: sent.targetContainerId,
    seedsPerCell: sent.seedsPerCell,
    texts: sent.texts,
    stages: sent.stages.map((stage): StageDetail => ({
      ...stage,
      durationSource: stage.durationSource ?? null,
      shareSource: stage.shareSource ?? null,
      season: stage.season ?? null,
      share: kept(stage.share, 6),
      temperatureLowC: keptDegrees(stage.temperatureLowC),
      temperatureHighC: keptDegrees(stage.temperatureHighC),
    })),
  };
  requirePlan(content.stages, dormantMonths);
  const allowed = stagesForMethod(method);
  for (const [at, stage] of content.stages.entries()) {
    if (!allowed.includes(stage.kind))
      refuse('stage-not-for-method', { stage: stage.kind, method }, `stages.${at}.kind`);
    const { temperatureLowC: low, temperatureHighC: high } = stage;
    if (low !== null && high !== null && high < low)
      refuse('temperature-out-of-order', { low, high }, `stages.${at}.temperatureHighC`);
  }
  await requireUnitsFit(context, method, content);
  for (const [at, { containerId }] of content.stages.entries())
    if (containerId) await loadContainer(context, containerId, `stages.${at}.containerId`);
  return content;
}

async function requireUnitsFit(
  context: ReadContext,
  method: PropagationMethod,
  { startUnit, startContainerId, targetContainerId, seedsPerCell }: ProtocolContent,
): Promise<void> {
  const fits = UNITS_FOR_METHOD[method];
  if (!fits.includes(startUnit))
    refuse('unit-not-for-method', { unit: startUnit, method, fits: [...fits] }, 'startUnit');
  if (seedsPerCell !== null && method !== 'seed') refuse('seeds-for-seed-only', { method }, 'seedsPerCell');
  if (seedsPerCell !== null && startUnit !== 'cell') refuse('seeds-need-cells', { unit: startUnit }, 'seedsPerCell');
  if (startContainerId) {
    const container = await loadContainer(context, startContainerId, 'startContainerId');
    const kinds = containersForUnit(startUnit);
    if (!kinds.includes(container.kind))
      refuse(
        'container-not-for-unit',
        { unit: startUnit, container: container.name, fits: kinds.map((kind) => kind ?? 'none') },
        'startContainerId',
      );
  }
  if (targetContainerId) await loadContainer(context, targetContainerId, 'targetContainerId');
}

/** Asks the domain, and says what it objects to in terms that carry the numbers. */
function requirePlan(stages: readonly StagePlan[], dormantMonths: readonly number[]): void {
  try {
    requireProtocolPlan({ stages, dormantMonths });
  } catch (error) {
    if (error instanceof InputError) objectTo(error.argument, stages);
    throw error;
  }
}

function objectTo(argument: string, stages: readonly StagePlan[]): void {
  const [, at = '', part = ''] = argument.split('.');
  const stage = stages[Number(at)];
  if (!stage) return;
  const { kind, shortDays, usualDays, longDays } = stage;
  if (part === 'usualDays')
    refuse(
      'duration-out-of-order',
      { stage: kind, pace: 'usual', than: 'short', least: shortDays, days: usualDays },
      argument,
    );
  if (part === 'longDays')
    refuse(
      'duration-out-of-order',
      { stage: kind, pace: 'long', than: 'usual', least: usualDays, days: longDays },
      argument,
    );
  const before = stages[Number(at) - 1];
  if (part !== 'kind' || !before) return;
  if (stages.slice(0, Number(at)).some((earlier) => earlier.kind === kind))
    refuse('stage-twice', { stage: kind }, argument);
  refuse('stage-out-of-order', { stage: kind, before: before.kind }, argument);
}
