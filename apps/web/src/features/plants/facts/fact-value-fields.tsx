/** The controls for a fact's value: a text, an amount, two bounds, months, a list, or a choice, as its field asks. */
import type { plants as contracts } from '@rootclock/contracts';
import { ESTABLISHMENT_MEANS } from '@rootclock/domain';
import { useMessages } from '../../../messages/index.ts';
import { NumberField, SelectField, TextArea } from '../../../ui/fields/index.ts';
import { MonthsField } from '../months-field.tsx';

/** Every shape a value can be typed in; only one of them is in use. */
export interface TypedFact {
  text: string;
  amount: number | null;
  low: number | null;
  high: number | null;
  months: number[];
}

type Shape = 'text' | 'amount' | 'range' | 'months' | 'list' | 'means';

const SHAPES: Partial<Record<contracts.SettableFact, Shape>> = {
  propagationMethods: 'list',
  larvalHostOf: 'list',
  stratificationDays: 'range',
  germinationPercent: 'range',
  heightCm: 'range',
  spreadCm: 'range',
  hardinessZones: 'range',
  seedsPerGram: 'amount',
  timeToGrowMonths: 'amount',
  bloomMonths: 'months',
  establishmentMeans: 'means',
};
const UNITS: Partial<Record<contracts.SettableFact, string>> = {
  germinationPercent: '%',
  heightCm: 'cm',
  spreadCm: 'cm',
};
const shapeOf = (field: contracts.SettableFact): Shape => SHAPES[field] ?? 'text';

export function asTyped(value: contracts.PlantFactValue): TypedFact {
  const list = Array.isArray(value) ? [...value] : [];
  const numbers = list.filter((each): each is number => typeof each === 'number');
  return {
    text: typeof value === 'string' ? value : list.filter((each) => typeof each === 'string').join('\n'),
    amount: typeof value === 'number' ? value : null,
    low: numbers[0] ?? null,
    high: numbers[1] ?? null,
    months: numbers.filter((each) => each >= 1 && each <= 12),
  };
}

/** The value as the contract asks for it; what is left open stays open, and the contract says so. */
export function valueOf(field: contracts.SettableFact, typed: TypedFact): unknown {
  switch (shapeOf(field)) {
    case 'amount':
      return typed.amount ?? undefined;
    case 'range':
      return [typed.low ?? undefined, typed.high ?? typed.low ?? undefined];
    case 'months':
      return typed.months;
    case 'list':
      return typed.text
        .split('\n')
        .map((line) => line.trim())
        .filter(Boolean);
    case 'means':
    case 'text':
      return typed.text;
  }
}

export interface FactValueFieldsProps {
  field: contracts.SettableFact;
  typed: TypedFact;
  onChange: (part: Partial<TypedFact>) => void;
}

export function FactValueFields({ field, typed, onChange }: FactValueFieldsProps) {
  const { plants } = useMessages();
  const say = plants.page;
  const unit = UNITS[field] ? { unit: UNITS[field] } : {};
  const text = {
    name: 'value',
    label: say.factValue,
    value: typed.text,
    onChange: (next: string) => onChange({ text: next }),
  };
  switch (shapeOf(field)) {
    case 'amount':
      return (
        <NumberField
          label={say.factValue}
          name="value"
          decimal
          value={typed.amount}
          onChange={(amount) => onChange({ amount })}
        />
      );
    case 'range':
      return (
        <>
          <NumberField
            label={say.factLow}
            name="value.0"
            decimal
            {...unit}
            value={typed.low}
            onChange={(low) => onChange({ low })}
          />
          <NumberField
            label={say.factHigh}
            name="value.1"
            decimal
            {...unit}
            value={typed.high}
            onChange={(high) => onChange({ high })}
          />
        </>
      );
    case 'months':
      return (
        <MonthsField
          label={say.factValue}
          name="value"
          value={typed.months}
          onChange={(months) => onChange({ months })}
        />
      );
    case 'list':
      return <TextArea {...text} hint={say.factList} />;
    case 'means':
      return (
        <SelectField
          {...text}
          value={ESTABLISHMENT_MEANS.find((means) => means === typed.text) ?? ''}
          choices={ESTABLISHMENT_MEANS.map((value) => ({ value, label: plants.means[value] }))}
        />
      );
    case 'text':
      return <TextArea {...text} />;
  }
}
