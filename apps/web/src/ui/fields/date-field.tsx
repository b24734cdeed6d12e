/** DateField: a calendar date in the browser's own picker. The value is `YYYY-MM-DD`, empty while incomplete. */
import { FieldFrame, useField, type FieldProps } from './field.tsx';

export interface DateFieldProps extends FieldProps {
  value: string;
  onChange: (value: string) => void;
  min?: string;
  max?: string;
}

export function DateField({ value, onChange, min, max, ...props }: DateFieldProps) {
  const field = useField(props);
  return (
    <FieldFrame field={field} {...props}>
      <input
        {...field.control}
        className="field-box field-box-day"
        type="date"
        min={min}
        max={max}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}
