/** CauseField: why plants were lost. */
import { LOSS_CAUSES, type LossCause } from '@rootclock/domain';
import { useMessages } from '../../../../messages/index.ts';
import { SelectField } from '../../../../ui/fields/index.ts';

/** `failed` is a batch's cause: seed that never came up. */
const OF_LOTS = LOSS_CAUSES.filter((cause) => cause !== 'failed');

export function CauseField({ value, onChange }: { value: LossCause | ''; onChange: (cause: LossCause | '') => void }) {
  const { sheets, words } = useMessages().lots;
  return (
    <SelectField
      name="cause"
      label={sheets.cause}
      value={value}
      onChange={onChange}
      choices={OF_LOTS.map((cause) => ({ value: cause, label: words.causes[cause] }))}
    />
  );
}
