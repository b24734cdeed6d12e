/** Asked before plants leave whose root balls nobody has looked at. */
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import type { usePull } from './use-pull.ts';

export function AskRootBall({ pull }: { pull: ReturnType<typeof usePull> }) {
  const { gardens } = useMessages();
  const words = gardens.pull;
  if (!pull.asking) return null;
  return (
    <Callout
      tone="caution"
      title={words.notCheckedTitle}
      announce
      actions={
        <>
          <Button look="primary" busy={pull.busy} onClick={pull.confirm}>
            {words.itHolds}
          </Button>
          <Button onClick={pull.leave}>{words.leaveThem}</Button>
        </>
      }
    >
      {words.notCheckedText(pull.asking.lots)}
    </Callout>
  );
}
