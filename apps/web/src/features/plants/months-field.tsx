/** MonthsField: some of the twelve months, each a touch target of its own. */
import { FieldFrame, useField, type FieldProps } from '../../ui/fields/index.ts';
import { useMonthNames } from './facts/fact-value.tsx';
import './plants.css';

export interface MonthsFieldProps extends FieldProps {
  value: readonly number[];
  onChange: (months: number[]) => void;
}

export function MonthsField({ value, onChange, ...props }: MonthsFieldProps) {
  const names = useMonthNames('short');
  const field = useField(
    props,
    names.map((label, index) => ({ value: String(index + 1), label })),
  );
  const turn = (month: number) =>
    onChange(value.includes(month) ? value.filter((each) => each !== month) : [...value, month].sort((a, b) => a - b));
  return (
    <FieldFrame field={field} group {...props}>
      <div className="months-field">
        {names.map((name, index) => (
          <label key={name} className="segment">
            <input
              type="checkbox"
              className="choice-mark"
              checked={value.includes(index + 1)}
              onChange={() => turn(index + 1)}
            />
            <span>{name}</span>
          </label>
        ))}
      </div>
    </FieldFrame>
  );
}
