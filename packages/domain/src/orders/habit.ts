import { BED_SUN, type BedSun } from '../clients.ts';

/** The traits by which one plant can take another's place in a bed. */
export const HABIT_TRAITS = ['height', 'light', 'bloom'] as const;
export type HabitTrait = (typeof HABIT_TRAITS)[number];

/** As plants' pages tell it; null where nothing is told. */
export interface HabitFacts {
  /** From the lowest to the highest, in centimetres. */
  heightCm: readonly [number, number] | null;
  /** In words, as the source printed them. */
  light: string | null;
  /** Months 1 to 12. */
  bloomMonths: readonly number[] | null;
}

/** Edge, front, middle and back of a bed. The borders are this product's own convention, not a published one. */
export const HEIGHT_CLASSES = ['low', 'medium', 'tall', 'very-tall'] as const;
export type HeightClass = (typeof HEIGHT_CLASSES)[number];
const UP_TO_CM: readonly (readonly [HeightClass, number])[] = [
  ['low', 45],
  ['medium', 90],
  ['tall', 150],
];

/** The class of the middle of a range of heights. */
export function heightClass([low, high]: readonly [number, number]): HeightClass {
  const middle = (low + high) / 2;
  return UP_TO_CM.find(([, most]) => middle <= most)?.[0] ?? 'very-tall';
}

const HALF_LIGHT = /\b(part|partial|partly|half|semi|dappled|media|medio|parcial)/;
const DARK = /\b(shade|shady|sombra)/;
const BRIGHT = /\b(full|sun|sunny|pleno|plena|sol)\b/;
const DENIED = /\b(no|not|never|avoid|sin|nunca|evitar)\b/;

/**
 * The lights a plant stands in, the brightest first, read from words such as "full sun to part shade": what lies between two that are named
 * counts too. Null when the words name none, or deny one, which nobody should guess at.
 */
export function lightsIn(words: string | null): BedSun[] | null {
  if (words === null || DENIED.test(words.toLowerCase())) return null;
  const named = words
    .toLowerCase()
    .split(/[,;/–]|\b(?:to|or|and|until|a|o|y|hasta)\b/)
    .flatMap((part): BedSun[] =>
      HALF_LIGHT.test(part) ? ['part-sun'] : DARK.test(part) ? ['shade'] : BRIGHT.test(part) ? ['full-sun'] : [],
    )
    .map((light) => BED_SUN.indexOf(light));
  return named.length === 0 ? null : BED_SUN.slice(Math.min(...named), Math.max(...named) + 1);
}

/** Which traits are not told, or not in words that can be read. */
export function untoldTraits({ heightCm, light, bloomMonths }: HabitFacts): HabitTrait[] {
  const untold = {
    height: heightCm === null,
    light: lightsIn(light) === null,
    bloom: bloomMonths === null || bloomMonths.length === 0,
  };
  return HABIT_TRAITS.filter((trait) => untold[trait]);
}

/** What two plants have in common. */
export interface SharedHabit {
  heightClass: HeightClass;
  /** All lights of the plant that is asked for. */
  lights: BedSun[];
  /** Months in which both bloom, in order. */
  bloomMonths: number[];
}

/**
 * What `other` shares with `asked` when it can take its place: the same height class, at home in every light that the asked one stands in (the
 * bed may have any of them), and in bloom in at least half of its months. Null when it cannot, or when a trait of either is not told.
 */
export function sharedHabit(asked: HabitFacts, other: HabitFacts): SharedHabit | null {
  const [lights, lightsOfOther] = [lightsIn(asked.light), lightsIn(other.light)];
  const [months, monthsOfOther] = [asked.bloomMonths ?? [], other.bloomMonths ?? []];
  if (
    asked.heightCm === null ||
    other.heightCm === null ||
    lights === null ||
    lightsOfOther === null ||
    months.length === 0
  )
    return null;
  const both = [...new Set(months)].filter((month) => monthsOfOther.includes(month)).toSorted((a, b) => a - b);
  const isSame =
    heightClass(asked.heightCm) === heightClass(other.heightCm) &&
    lights.every((light) => lightsOfOther.includes(light)) &&
    both.length * 2 >= new Set(months).size;
  return isSame ? { heightClass: heightClass(asked.heightCm), lights, bloomMonths: both } : null;
}
