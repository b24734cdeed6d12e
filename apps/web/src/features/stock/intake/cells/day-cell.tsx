/** DayCell: a rough day as it is jotted down, with what was read of it in words below. */
import { earliestOfDay } from '@rootclock/domain';
import { useState } from 'react';
import { useFormat } from '../../../../lib/format/index.ts';
import { useSession } from '../../../../lib/api/index.ts';
import { useLanguage, useMessages } from '../../../../messages/index.ts';
import { TextField, type FieldProps } from '../../../../ui/fields/index.ts';
import { readRoughDay } from './rough-day-text.ts';

export interface DayCellProps extends FieldProps {
  value: string;
  onChange: (value: string) => void;
  /** Said when nothing is known. */
  unknown: string;
}

export function DayCell({ value, onChange, unknown, ...props }: DayCellProps) {
  const {
    ui,
    stockIn: { intake },
  } = useMessages();
  const { dates } = useFormat();
  const { today } = useSession();
  const language = useLanguage();
  const [focused, setFocused] = useState(false);
  const read = readRoughDay(value, { today, language });
  const words = () => {
    if (read.kind === 'unknown') return unknown;
    if (read.kind === 'unreadable') return focused ? props.hint : undefined;
    const { earliestOn, precision } = earliestOfDay(read.text);
    return intake.readAs(dates.rough(earliestOn, precision, (season) => ui[season]));
  };
  return (
    <div className="day-cell" onFocus={() => setFocused(true)} onBlur={() => setFocused(false)}>
      <TextField
        {...props}
        value={value}
        onChange={onChange}
        autoComplete="off"
        hint={words()}
        error={!focused && read.kind === 'unreadable' ? intake.notUnderstood : undefined}
      />
    </div>
  );
}
