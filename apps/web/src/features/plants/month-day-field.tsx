/** MonthDayField: a day that comes every year, such as a window's edge. The value is MM-DD, empty when there is none. */
import { useState } from 'react';
import { useMessages } from '../../messages/index.ts';
import { FieldFrame, useField, type FieldProps } from '../../ui/fields/index.ts';
import { useMonthNames } from './facts/fact-value.tsx';
import './plants.css';

export interface MonthDayFieldProps extends FieldProps {
  value: string;
  onChange: (monthDay: string) => void;
}

const twoDigits = (number: number) => String(number).padStart(2, '0');
/** A leap year has every day that can come. */
const daysIn = (month: string) => (month === '' ? 31 : new Date(Date.UTC(2000, Number(month), 0)).getUTCDate());

export function MonthDayField({ value, onChange, ...props }: MonthDayFieldProps) {
  const field = useField(props);
  const { form: say } = useMessages().plants;
  const months = useMonthNames();
  // One half may be chosen before the other; only both together are a day.
  const [half, setHalf] = useState({ month: value.slice(0, 2), day: value.slice(3) });
  const shown = value === '' ? half : { month: value.slice(0, 2), day: value.slice(3) };
  const choose = (part: Partial<typeof half>) => {
    const next = { ...shown, ...part };
    const day = next.day !== '' && Number(next.day) > daysIn(next.month) ? twoDigits(daysIn(next.month)) : next.day;
    setHalf({ ...next, day });
    onChange(next.month !== '' && day !== '' ? `${next.month}-${day}` : '');
  };
  return (
    <FieldFrame field={field} {...props}>
      <div className="month-day-line">
        <select
          {...field.control}
          className="field-box select-box"
          aria-label={`${props.label}: ${say.month}`}
          value={shown.month}
          onChange={(event) => choose({ month: event.target.value })}
        >
          <option value="">{say.month}</option>
          {months.map((name, index) => (
            <option key={name} value={twoDigits(index + 1)}>
              {name}
            </option>
          ))}
        </select>
        <select
          className="field-box select-box"
          aria-label={`${props.label}: ${say.day}`}
          value={shown.day}
          onChange={(event) => choose({ day: event.target.value })}
        >
          <option value="">{say.day}</option>
          {Array.from({ length: daysIn(shown.month) }, (_, index) => (
            <option key={index} value={twoDigits(index + 1)}>
              {index + 1}
            </option>
          ))}
        </select>
      </div>
    </FieldFrame>
  );
}
