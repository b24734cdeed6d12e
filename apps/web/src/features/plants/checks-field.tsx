/** ChecksField: one or more of several, in columns where there is room. */
import { FieldFrame, useField, type FieldProps } from '../../ui/fields/index.ts';
import './plants.css';

export interface ChecksFieldProps<T extends string> extends FieldProps {
  value: readonly T[];
  onChange: (value: T[]) => void;
  choices: readonly { value: T; label: string }[];
}

export function ChecksField<T extends string>({ value, onChange, choices, ...props }: ChecksFieldProps<T>) {
  const field = useField(props, choices);
  return (
    <FieldFrame field={field} group {...props}>
      <div className="checks-field">
        {choices.map((choice) => (
          <label key={choice.value} className="choice">
            <input
              type="checkbox"
              className="choice-mark"
              checked={value.includes(choice.value)}
              onChange={(event) =>
                onChange(
                  event.target.checked ? [...value, choice.value] : value.filter((each) => each !== choice.value),
                )
              }
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </FieldFrame>
  );
}
