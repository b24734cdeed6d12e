/**
 * CheckboxField: yes or no. RadioField: one of a few, all in sight; as `segments` they stand side by side like a switch.
 * Each choice is a full touch target and may carry a hint.
 */
import { FieldFrame, useField, type FieldProps } from './field.tsx';
import type { Choice } from './select-field.tsx';
import './choice-fields.css';

export interface CheckboxFieldProps extends FieldProps {
  value: boolean;
  onChange: (value: boolean) => void;
}

export function CheckboxField({ value, onChange, ...props }: CheckboxFieldProps) {
  const field = useField({ ...props, optional: true });
  return (
    <div className="field" data-invalid={field.error ? true : undefined}>
      <label className="choice">
        <input
          {...field.control}
          type="checkbox"
          className="choice-mark"
          checked={value}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span>{props.label}</span>
      </label>
      {props.hint && (
        <div className="field-hint choice-below" id={`${field.id}-hint`}>
          {props.hint}
        </div>
      )}
      {field.error && (
        <p className="field-error choice-below" id={`${field.id}-error`}>
          {field.error}
        </p>
      )}
    </div>
  );
}

export interface RadioFieldProps<T extends string> extends FieldProps {
  value: T | '';
  onChange: (value: T) => void;
  choices: readonly Choice<T>[];
  look?: 'list' | 'segments';
}

export function RadioField<T extends string>({
  value,
  onChange,
  choices,
  look = 'list',
  ...props
}: RadioFieldProps<T>) {
  const field = useField(props, choices);
  return (
    <FieldFrame field={field} group {...props}>
      <div className={look === 'segments' ? 'segments' : 'choices'}>
        {choices.map((choice) => (
          <label key={choice.value} className={look === 'segments' ? 'segment' : 'choice'}>
            <input
              type="radio"
              className="choice-mark"
              name={field.id}
              value={choice.value}
              disabled={choice.disabled}
              checked={value === choice.value}
              onChange={() => onChange(choice.value)}
            />
            <span lang={choice.lang}>
              {choice.label}
              {choice.hint && <span className="choice-hint">{choice.hint}</span>}
            </span>
          </label>
        ))}
      </div>
    </FieldFrame>
  );
}
