/** The terms of a rule: how long, and whether its plants may be carried over winter. */
import { isSpan, type PotLifeBasis } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { CheckboxField, NumberField, SelectField, TextField } from '../../../ui/fields/index.ts';

export const SPAN_UNITS = ['Y', 'M', 'W', 'D'] as const;
export type SpanUnit = (typeof SPAN_UNITS)[number];

export interface Terms {
  amount: number | null;
  unit: SpanUnit | '';
  mayCarry: boolean;
  maxDays: number | null;
  graceDays: number | null;
  note: string;
}

export const NEW_TERMS: Terms = { amount: 1, unit: 'Y', mayCarry: false, maxDays: 150, graceDays: 21, note: '' };

const MONTHS_IN_YEAR = 12;
const DAYS_IN_WEEK = 7;

/** A span as one amount of one unit, the coarsest that says it exactly; null where months and days are mixed. */
export function spanParts(span: string | null): { amount: number; unit: SpanUnit } | null {
  const [, years = 0, months = 0, weeks = 0, days = 0] = (
    /^P(?:(\d+)Y)?(?:(\d+)M)?(?:(\d+)W)?(?:(\d+)D)?$/.exec(span ?? '') ?? []
  ).map((part) => Number(part ?? 0));
  const allMonths = years * MONTHS_IN_YEAR + months;
  const allDays = weeks * DAYS_IN_WEEK + days;
  if ((allMonths === 0) === (allDays === 0)) return null;
  if (allMonths > 0)
    return allMonths % MONTHS_IN_YEAR === 0
      ? { amount: allMonths / MONTHS_IN_YEAR, unit: 'Y' }
      : { amount: allMonths, unit: 'M' };
  return weeks > 0 && days === 0 ? { amount: weeks, unit: 'W' } : { amount: allDays, unit: 'D' };
}

/** What a command's body says of the terms; what cannot be read stays open, and the contract says so. */
export function termsBody(basis: PotLifeBasis | '', { amount, unit, mayCarry, maxDays, graceDays, note }: Terms) {
  const span = `P${amount ?? ''}${unit}`;
  const winterCarry =
    mayCarry && basis !== 'no-winter' ? { maxDays: maxDays ?? undefined, graceDays: graceDays ?? undefined } : null;
  return {
    span: basis === 'no-winter' ? null : amount === null ? undefined : isSpan(span) ? span : '?',
    winterCarry,
    note,
  };
}

export interface TermsFieldsProps {
  basis: PotLifeBasis | '';
  terms: Terms;
  onChange: (part: Partial<Terms>) => void;
}

export function TermsFields({ basis, terms, onChange }: TermsFieldsProps) {
  const { form: say } = useMessages().rules;
  return (
    <>
      {basis !== 'no-winter' && (
        <>
          <NumberField
            label={say.amount}
            name="span"
            value={terms.amount}
            onChange={(amount) => onChange({ amount })}
          />
          <SelectField
            label={say.unit}
            name="unit"
            value={terms.unit}
            onChange={(unit) => onChange({ unit })}
            choices={SPAN_UNITS.map((value) => ({ value, label: say.units[value] }))}
          />
          <CheckboxField
            label={say.mayCarry}
            name="mayCarry"
            value={terms.mayCarry}
            onChange={(mayCarry) => onChange({ mayCarry })}
          />
          {terms.mayCarry && (
            <>
              <NumberField
                label={say.maxDays}
                name="winterCarry.maxDays"
                value={terms.maxDays}
                onChange={(maxDays) => onChange({ maxDays })}
              />
              <NumberField
                label={say.graceDays}
                name="winterCarry.graceDays"
                value={terms.graceDays}
                onChange={(graceDays) => onChange({ graceDays })}
              />
            </>
          )}
        </>
      )}
      <TextField label={say.note} name="note" optional value={terms.note} onChange={(note) => onChange({ note })} />
    </>
  );
}
