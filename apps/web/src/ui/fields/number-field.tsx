/**
 * NumberField: a count or measure. It keeps the text as typed and answers a number, null when empty and NaN when it cannot
 * be read, so that the contract says what is wrong instead of the field swallowing it. `steps` adds − and + for wet fingers.
 */
import { useState } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import { FieldFrame, useField, type FieldProps } from './field.tsx';

export interface NumberFieldProps extends FieldProps {
  value: number | null;
  onChange: (value: number | null) => void;
  /** The word behind the number, such as pots or mm. */
  unit?: string;
  /** Fractions are let in; otherwise the keyboard offers whole numbers only. */
  decimal?: boolean;
  steps?: boolean;
  min?: number;
}

/** Reads a typed number with either decimal mark; spaces may group digits. */
export function readNumber(text: string): number | null {
  const plain = text.replaceAll(/\s/g, '').replace(',', '.');
  if (plain === '') return null;
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

export function NumberField({
  value,
  onChange,
  unit,
  decimal = false,
  steps = false,
  min = 0,
  ...props
}: NumberFieldProps) {
  const field = useField(props);
  const { ui } = useMessages();
  const [typed, setTyped] = useState(value === null ? '' : String(value));
  // The text stays as typed ("12," on the way to "12,5") until the value is changed from outside.
  const shown = Object.is(readNumber(typed), value)
    ? typed
    : value === null || Number.isNaN(value)
      ? ''
      : String(value);
  const change = (text: string) => {
    setTyped(text);
    onChange(readNumber(text));
  };
  const step = (by: number) => change(String(Math.max(min, (Number.isNaN(value) ? 0 : (value ?? 0)) + by)));
  return (
    <FieldFrame field={field} {...props}>
      <div className="field-line">
        {steps && (
          <Button aria-label={`${ui.fewer}: ${props.label}`} onClick={() => step(-1)}>
            −
          </Button>
        )}
        <input
          {...field.control}
          className="field-box field-box-figure"
          type="text"
          inputMode={decimal ? 'decimal' : 'numeric'}
          autoComplete="off"
          value={shown}
          onChange={(event) => change(event.target.value)}
        />
        {steps && (
          <Button aria-label={`${ui.oneMore}: ${props.label}`} onClick={() => step(1)}>
            +
          </Button>
        )}
        {unit && <span className="field-unit">{unit}</span>}
      </div>
    </FieldFrame>
  );
}
