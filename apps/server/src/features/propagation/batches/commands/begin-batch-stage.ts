import { propagation } from '@rootclock/contracts';
import { FIELD, stageBeginnings } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../../stock/ledger/post.ts';
import { loadProtocolVersion, planOf } from '../../protocols/store.ts';
import { settleBatch } from '../history/settle.ts';
import { loadBatchEntries } from '../history/store.ts';
import { loadOpenBatch } from '../open.ts';

/** Somebody says that a stage began. It governs over what counts and pottings imply, and sets a day right that was said before. */
export const beginBatchStage = command({
  name: 'beginBatchStage',
  input: propagation.beginBatchStage,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    if (!batch.protocolVersionId) refuse('batch-without-protocol', { batch: batch.code });
    const plan = planOf(await loadProtocolVersion(context, batch.protocolVersionId));
    const stage = plan.stages[input.position];
    const kindAt = (position: number) => plan.stages[position]?.kind ?? '';
    if (!stage)
      refuse(
        'stage-not-in-protocol',
        { position: input.position, stages: plan.stages.map(({ kind }) => kind) },
        'position',
      );
    const begun = stageBeginnings(plan, await loadBatchEntries(context, batch.id));
    const earlier = begun.filter(({ position, on }) => position < input.position && on > input.happenedOn).at(-1);
    if (earlier)
      refuse(
        'stage-before-earlier',
        { stage: stage.kind, day: input.happenedOn, earlier: kindAt(earlier.position), earlierOn: earlier.on },
        'happenedOn',
      );
    // A later stage that is merely implied gives way; one that somebody said, or that the batch started in, does not.
    const later = begun.find(
      ({ position, on, basis }) =>
        position > input.position && on < input.happenedOn && (basis === 'said' || basis === 'start'),
    );
    if (later)
      refuse(
        'stage-after-later',
        { stage: stage.kind, day: input.happenedOn, later: kindAt(later.position), laterOn: later.on },
        'happenedOn',
      );
    const entryId = await openEntry(context, {
      kind: 'observe',
      happenedOn: input.happenedOn,
      note: input.note,
      details: { stage: { position: input.position, kind: stage.kind } },
      subjects: [{ kind: 'batch', id: batch.id }],
    });
    await settleBatch(context, batch.id);
    return { entryId, stage: stage.kind };
  },
});
