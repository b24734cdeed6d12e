/** SelectField: one of a short fixed list, in the platform's own picker. Without a value it asks to choose. */
import { useMessages } from '../../messages/index.ts';
import { FieldFrame, useField, type FieldProps } from './field.tsx';

export interface Choice<T extends string> {
  value: T;
  label: string;
  hint?: string;
  disabled?: boolean;
  /** The language of the label where it is not the screen's. */
  lang?: string;
}

export interface SelectFieldProps<T extends string> extends FieldProps {
  value: T | '';
  onChange: (value: T | '') => void;
  choices: readonly Choice<T>[];
  /** The words of the empty choice; by default it asks to choose. */
  empty?: string;
}

export function SelectField<T extends string>({ value, onChange, choices, empty, ...props }: SelectFieldProps<T>) {
  const field = useField(props, choices);
  const { ui } = useMessages();
  return (
    <FieldFrame field={field} {...props}>
      <select
        {...field.control}
        className="field-box"
        value={value}
        onChange={(event) => onChange(choices.find((choice) => choice.value === event.target.value)?.value ?? '')}
      >
        <option value="">{empty ?? ui.choose}</option>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value} disabled={choice.disabled}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
