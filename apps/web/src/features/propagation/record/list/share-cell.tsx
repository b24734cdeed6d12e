/** ShareCell: what is believed of one stage, its bar, and in words what that rests on. */
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { ShownStage } from '../learned.ts';
import { ShareBar } from '../share-bar.tsx';

export function ShareCell({ stage, hasProtocol }: { stage: ShownStage | null; hasProtocol: boolean }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  if (!stage) return <span className="share-words">{hasProtocol ? say.notInProtocol : say.notCounted}</span>;
  return (
    <div className="share-cell">
      <span className="share-figure">{numbers.share(stage.share)}</span>
      <ShareBar stage={stage} />
      {stage.tried === 0 ? (
        <span className="share-words">{say.priorAlone}</span>
      ) : (
        <>
          <span className="share-words">
            {say.counts(numbers.count(stage.passed), numbers.count(stage.tried), stage.what, stage.batches)}
          </span>
          <span className="share-words">
            {say.interval(numbers.share(stage.low), numbers.share(stage.high))}
            {stage.prior && `; ${say.prior(numbers.share(stage.prior.share))}`}
          </span>
        </>
      )}
    </div>
  );
}
