/**
 * RoughDayField: a day as people remember it. The value is `2026-04-14`, `2026-04`, `2026-spring`, `2026`, or empty while
 * nothing is known or the answer is not whole yet; the form is the one `earliestOfDay` of the domain reads.
 */
import { DAY_PRECISIONS, SEASONS, type DayPrecision, type Season } from '@rootclock/domain';
import { useState } from 'react';
import { useLanguage, useMessages } from '../../messages/index.ts';
import { FieldFrame, useField, type FieldProps } from './field.tsx';

export interface RoughDayFieldProps extends FieldProps {
  value: string;
  onChange: (value: string) => void;
  max?: string;
}

type Precision = DayPrecision | 'unknown';

interface Draft {
  precision: Precision;
  day: string;
  month: string;
  season: Season;
  year: string;
}

/** What was typed, as the domain's text; empty while it is not whole. */
export function roughDayText({ precision, day, month, season, year }: Draft): string {
  if (precision === 'unknown') return '';
  if (precision === 'day') return day;
  if (!/^\d{4}$/.test(year)) return '';
  if (precision === 'year') return year;
  return precision === 'month' ? `${year}-${month}` : `${year}-${season}`;
}

/** The draft that shows a stored text, filled up from the fallback day where the text says nothing. */
export function roughDayDraft(text: string, fallbackDay: string): Draft {
  const [year = '', rest] = text.split('-');
  const season = SEASONS.find((name) => name === rest);
  const base: Draft = {
    precision: 'day',
    day: '',
    month: fallbackDay.slice(5, 7) || '01',
    season: 'spring',
    year: year || fallbackDay.slice(0, 4),
  };
  if (text.length === 10) return { ...base, day: text };
  if (season) return { ...base, precision: 'season', season };
  if (rest) return { ...base, precision: 'month', month: rest };
  return { ...base, precision: text ? 'year' : 'day' };
}

export function RoughDayField({ value, onChange, max, ...props }: RoughDayFieldProps) {
  const field = useField(props);
  const { ui } = useMessages();
  const language = useLanguage();
  const [draft, setDraft] = useState(() => roughDayDraft(value, max ?? ''));
  const change = (part: Partial<Draft>) => {
    const next = { ...draft, ...part };
    setDraft(next);
    onChange(roughDayText(next));
  };
  const precisions: Record<Precision, string> = {
    day: ui.dayKnown,
    month: ui.monthKnown,
    season: ui.seasonKnown,
    year: ui.yearKnown,
    unknown: ui.notKnown,
  };
  const seasons: Record<Season, string> = {
    spring: ui.spring,
    summer: ui.summer,
    autumn: ui.autumn,
    winter: ui.winter,
  };
  const monthName = new Intl.DateTimeFormat(language, { month: 'long', timeZone: 'UTC' });
  const offered: Precision[] = props.optional ? [...DAY_PRECISIONS, 'unknown'] : [...DAY_PRECISIONS];

  return (
    <FieldFrame field={field} group {...props}>
      <div className="field-pair">
        <select
          aria-label={ui.howExact}
          className="field-box"
          value={draft.precision}
          onChange={(event) => change({ precision: offered.find((each) => each === event.target.value) ?? 'day' })}
        >
          {offered.map((precision) => (
            <option key={precision} value={precision}>
              {precisions[precision]}
            </option>
          ))}
        </select>
        {draft.precision === 'day' && (
          <input
            aria-label={ui.day}
            type="date"
            className="field-box"
            max={max}
            value={draft.day}
            onChange={(event) => change({ day: event.target.value })}
          />
        )}
        {draft.precision === 'month' && (
          <select
            aria-label={ui.month}
            className="field-box"
            value={draft.month}
            onChange={(event) => change({ month: event.target.value })}
          >
            {Array.from({ length: 12 }, (_, index) => (
              <option key={index} value={String(index + 1).padStart(2, '0')}>
                {monthName.format(new Date(Date.UTC(2001, index, 1)))}
              </option>
            ))}
          </select>
        )}
        {draft.precision === 'season' && (
          <select
            aria-label={ui.season}
            className="field-box"
            value={draft.season}
            onChange={(event) => change({ season: SEASONS.find((each) => each === event.target.value) ?? 'spring' })}
          >
            {SEASONS.map((season) => (
              <option key={season} value={season}>
                {seasons[season]}
              </option>
            ))}
          </select>
        )}
        {draft.precision !== 'day' && draft.precision !== 'unknown' && (
          <input
            aria-label={ui.year}
            className="field-box"
            inputMode="numeric"
            maxLength={4}
            value={draft.year}
            onChange={(event) => change({ year: event.target.value })}
          />
        )}
      </div>
      {draft.precision === 'season' && draft.season === 'winter' && (
        <p className="field-hint">{ui.winterYear(draft.year)}</p>
      )}
    </FieldFrame>
  );
}
