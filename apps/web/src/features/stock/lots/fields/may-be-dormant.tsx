/** MayBeDormant: asks once more before plants are written off that may only be asleep. It appears when the server has asked. */
import type { Failure } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';

export function MayBeDormant({
  failure,
  busy,
  onConfirm,
  onWait,
}: {
  failure: Failure | null;
  busy: boolean;
  onConfirm: () => void;
  onWait: () => void;
}) {
  const { sheets } = useMessages().lots;
  const { dates } = useFormat();
  if (failure?.code !== 'may-be-dormant') return null;
  const plant = String(failure.data?.['plant'] ?? '');
  const until = failure.data?.['lastEmergenceMd'];
  return (
    <Callout
      tone="caution"
      title={sheets.dormantAsk}
      announce
      actions={
        <>
          <Button onClick={onWait}>{sheets.dormantWait}</Button>
          <Button look="danger" busy={busy} onClick={onConfirm}>
            {sheets.dormantConfirm}
          </Button>
        </>
      }
    >
      {typeof until === 'string' ? sheets.dormantText(plant, dates.yearly(until)) : sheets.dormantTextOpen(plant)}
    </Callout>
  );
}
