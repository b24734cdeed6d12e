/** TextField: one line of text. TextArea: several. The value is the text as typed. */
import type { ComponentProps } from 'react';
import { FieldFrame, useField, type FieldProps } from './field.tsx';

type InputExtras = Pick<
  ComponentProps<'input'>,
  'autoComplete' | 'inputMode' | 'maxLength' | 'placeholder' | 'readOnly' | 'spellCheck' | 'autoCapitalize'
>;

export interface TextFieldProps extends FieldProps, InputExtras {
  type?: 'text' | 'email' | 'password' | 'search' | 'tel' | 'url';
  value: string;
  onChange: (value: string) => void;
}

export function TextField({ type = 'text', value, onChange, ...props }: TextFieldProps) {
  const field = useField(props);
  const { name: _name, label: _label, hint: _hint, error: _error, optional: _optional, ...extras } = props;
  return (
    <FieldFrame field={field} {...props}>
      <input
        {...extras}
        {...field.control}
        className="field-box"
        type={type}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}

export interface TextAreaProps extends FieldProps {
  value: string;
  rows?: number;
  maxLength?: number;
  onChange: (value: string) => void;
}

export function TextArea({ value, rows = 3, maxLength, onChange, ...props }: TextAreaProps) {
  const field = useField(props);
  return (
    <FieldFrame field={field} {...props}>
      <textarea
        {...field.control}
        className="field-box"
        rows={rows}
        maxLength={maxLength}
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}
