/** A fact's value in words, with the units its field is kept in. */
import type { plants as contracts } from '@rootclock/contracts';
import { isMonthDay, ROOT_HABITS, ESTABLISHMENT_MEANS } from '@rootclock/domain';
import { useFormat } from '../../../lib/format/index.ts';
import { useLanguage, useMessages } from '../../../messages/index.ts';

const MM_PER_CM = 10;

const isPair = (value: contracts.PlantFactValue): value is readonly [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every((each) => typeof each === 'number');
const numbersOf = (value: contracts.PlantFactValue): number[] =>
  Array.isArray(value) ? value.filter((each): each is number => typeof each === 'number') : [];

/** The names of months 1 to 12 in the reader's language. */
export function useMonthNames(style: 'long' | 'short' | 'narrow' = 'long'): string[] {
  const format = new Intl.DateTimeFormat(useLanguage(), { month: style, timeZone: 'UTC' });
  return Array.from({ length: 12 }, (_, month) => format.format(new Date(Date.UTC(2000, month, 1))));
}

export function useFactWords(): (field: string, value: contracts.PlantFactValue) => string {
  const { plants } = useMessages();
  const { page: say } = plants;
  const { dates, numbers, measures } = useFormat();
  const language = useLanguage();
  const months = useMonthNames();
  const list = new Intl.ListFormat(language, { type: 'conjunction' });
  const figure = new Intl.NumberFormat(language);

  return (field, value) => {
    if (value === null || (Array.isArray(value) && value.length === 0)) return say.unknownValue;
    switch (field) {
      case 'rootHabit':
        return plants.rootHabits[ROOT_HABITS.find((habit) => habit === value) ?? 'fibrous'];
      case 'establishmentMeans':
        return plants.means[ESTABLISHMENT_MEANS.find((means) => means === value) ?? 'uncertain'];
      case 'dormantMonths':
      case 'bloomMonths':
        return list.format(numbersOf(value).map((month) => months[month - 1] ?? ''));
      case 'lastEmergenceMd':
        return isMonthDay(value) ? dates.yearly(value) : String(value);
      case 'yearOfFirstBloom':
        return say.inYear(Number(value));
      case 'timeToGrowMonths':
        return say.months(Number(value));
      case 'heightCm':
      case 'spreadCm':
        return isPair(value)
          ? say.range(measures.length(value[0] * MM_PER_CM), measures.length(value[1] * MM_PER_CM))
          : String(value);
      case 'stratificationDays':
        return isPair(value) ? say.days(value[0], value[1]) : String(value);
      case 'germinationPercent':
        return isPair(value) ? say.percent(say.range(figure.format(value[0]), figure.format(value[1]))) : String(value);
      default:
        if (isPair(value)) return say.range(figure.format(value[0]), figure.format(value[1]));
        if (typeof value === 'number') return numbers.count(value);
        if (typeof value === 'boolean') return value ? say.yes : say.no;
        return Array.isArray(value) ? list.format(value.map(String)) : String(value);
    }
  };
}
