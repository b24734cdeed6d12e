/** KeepOrDrop: the end of a trial. Keeping runs the command that really makes the change; dropping forgets it. */
import { FIELD, GROWERS } from '@rootclock/domain';
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Section } from '../../../../ui/layout/index.ts';
import { KeepBatch } from './keep-batch.tsx';
import { KeepBatchLoss, KeepLotLoss } from './keep-loss.tsx';
import { KeepCancelled, KeepMoved, KeepNew } from './keep-order.tsx';
import type { KeepProps } from './keep-props.ts';

export function KeepOrDrop({ onDrop, ...props }: Omit<KeepProps, 'drop'> & { onDrop: () => void }) {
  const words = useMessages().promises.whatIf;
  const { mayBe } = useSession();
  const drop = <Button onClick={onDrop}>{words.drop}</Button>;
  const isLoss = props.change.kind === 'lose-lot' || props.change.kind === 'lose-batch';
  const shorter = props.answer.lines.filter(({ shorterBy }) => shorterBy > 0).length;
  return (
    <Section title={words.keepTitle}>
      <div className="stack">
        {mayBe(isLoss ? FIELD : GROWERS) ? (
          <>
            {shorter > 0 && <p>{words.keepLeaves(shorter)}</p>}
            <Keep {...props} drop={drop} />
          </>
        ) : (
          <>
            <p>{words.mayNot}</p>
            <div className="row">{drop}</div>
          </>
        )}
      </div>
    </Section>
  );
}

function Keep({ change, ...rest }: KeepProps) {
  switch (change.kind) {
    case 'move-order':
      return <KeepMoved {...rest} change={change} />;
    case 'cancel-order':
      return <KeepCancelled {...rest} change={change} />;
    case 'add-order':
      return <KeepNew {...rest} change={change} />;
    case 'lose-lot':
      return <KeepLotLoss {...rest} change={change} />;
    case 'lose-batch':
      return <KeepBatchLoss {...rest} change={change} />;
    case 'change-batch':
      return <KeepBatch {...rest} change={change} />;
  }
}
