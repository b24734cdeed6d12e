/** InstantField: a day and an hour in the browser's own picker. The value is `2026-05-20T18:00`, without a zone. */
import { FieldFrame, useField, type FieldProps } from '../../../ui/fields/field.tsx';

export function InstantField({
  value,
  onChange,
  ...props
}: FieldProps & { value: string; onChange: (value: string) => void }) {
  const field = useField(props);
  return (
    <FieldFrame field={field} {...props}>
      <input
        {...field.control}
        className="field-box"
        type="datetime-local"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}
