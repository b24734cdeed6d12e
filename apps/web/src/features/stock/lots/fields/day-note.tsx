/** The two fields every entry ends with: its day, and a note folded away. Both are named as in the body. */
import { useSession } from '../../../../lib/api/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { DateField, TextArea } from '../../../../ui/fields/index.ts';

interface Bound<Value> {
  name: string;
  value: Value;
  onChange: (value: Value) => void;
}

export function DayAndNote({ day, note }: { day: Bound<string>; note: Bound<string> }) {
  const { sheets } = useMessages().lots;
  const { today } = useSession();
  return (
    <>
      <DateField label={sheets.day} max={today} {...day} />
      <details className="lot-fold">
        <summary>{sheets.note}</summary>
        <TextArea label={sheets.note} optional rows={2} maxLength={2000} {...note} />
      </details>
    </>
  );
}
