/**
 * Reads a day as it is jotted down on a list: `4/14`, `9/2025`, `Sep 14 2025`, `fall 2025`, `2024`. The answer is the text that the
 * domain's `earliestOfDay` reads. What carries no year means the latest that is not still to come.
 */
import { earliestOfDay, InputError, type Season } from '@rootclock/domain';

export type ReadDay = { kind: 'unknown' } | { kind: 'known'; text: string } | { kind: 'unreadable' };

interface Reader {
  today: string;
  /** In English the month comes before the day, in Spanish after it. */
  language: string;
}

const SEASON_WORDS: Record<string, Season> = {
  spring: 'spring',
  summer: 'summer',
  fall: 'autumn',
  autumn: 'autumn',
  winter: 'winter',
  primavera: 'spring',
  verano: 'summer',
  otono: 'autumn',
  invierno: 'winter',
};
/** Shorter beginnings than this name too many months and seasons. */
const LEAST_LETTERS = 3;

const plain = (word: string): string => word.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
const two = (value: number): string => String(value).padStart(2, '0');
const wholeYear = (digits: string): string => (digits.length === 2 ? `20${digits}` : digits);

export function readRoughDay(typed: string, { today, language }: Reader): ReadDay {
  const text = typed.trim();
  if (text === '' || text === '?') return { kind: 'unknown' };
  const read = readFigures(text, language, today) ?? readWords(text, language, today);
  return read !== null && exists(read) ? { kind: 'known', text: read } : { kind: 'unreadable' };
}

function readFigures(text: string, language: string, today: string): string | null {
  const iso = /^(\d{4})(?:-(\d{1,2}))?(?:-(\d{1,2}))?$/.exec(text);
  if (iso) return [iso[1], ...[iso[2], iso[3]].flatMap((part) => (part ? [two(Number(part))] : []))].join('-');
  const monthYear = /^(\d{1,2})[/.-](\d{4})$/.exec(text);
  if (monthYear) return `${monthYear[2]}-${two(Number(monthYear[1]))}`;
  const day = /^(\d{1,2})[/.-](\d{1,2})(?:[/.-](\d{2}|\d{4}))?$/.exec(text);
  if (!day) return null;
  const [first, second] = [two(Number(day[1])), two(Number(day[2]))];
  const monthDay = language === 'en' ? `${first}-${second}` : `${second}-${first}`;
  return day[3] ? `${wholeYear(day[3])}-${monthDay}` : latest((year) => `${year}-${monthDay}`, today);
}

function readWords(text: string, language: string, today: string): string | null {
  const words = text.split(/[\s,.]+/).filter(Boolean);
  const names = words
    .filter((word) => /\p{L}/u.test(word))
    .map(plain)
    .filter((word) => word !== 'de' && word !== 'of');
  const figures = words.filter((word) => /^['’]?\d+$/.test(word)).map((word) => word.replace(/^['’]/, ''));
  const [name = ''] = names;
  if (
    names.length !== 1 ||
    name.length < LEAST_LETTERS ||
    figures.length + names.length < words.filter((word) => plain(word) !== 'de' && plain(word) !== 'of').length
  )
    return null;
  const season = Object.entries(SEASON_WORDS).find(([word]) => word.startsWith(name))?.[1];
  const month = monthCalled(name, language);
  const year =
    figures.find((figure) => figure.length === 4) ??
    (figures.length > (month ? 1 : 0) || (!month && figures.length === 1) ? figures.at(-1) : undefined);
  const day = figures.find((figure) => figure !== year && figure.length <= 2);
  const form = (of: string): string =>
    season ? `${of}-${season}` : day ? `${of}-${month}-${two(Number(day))}` : `${of}-${month}`;
  if (!season && !month) return null;
  return year ? form(wholeYear(year)) : latest((of) => form(of), today);
}

function monthCalled(name: string, language: string): string | null {
  const long = new Intl.DateTimeFormat(language, { month: 'long', timeZone: 'UTC' });
  for (let month = 0; month < 12; month += 1)
    if (plain(long.format(new Date(Date.UTC(2001, month, 1)))).startsWith(name)) return two(month + 1);
  return null;
}

/** The latest year in which it is not still to come; winter counts by the year in which it ends, so next year's may have begun. */
function latest(form: (year: string) => string, today: string): string | null {
  const thisYear = Number(today.slice(0, 4));
  for (const year of [thisYear + 1, thisYear, thisYear - 1, thisYear - 2, thisYear - 3, thisYear - 4]) {
    const text = form(String(year));
    if (exists(text) && earliestOfDay(text).earliestOn <= today) return text;
  }
  return null;
}

function exists(text: string): boolean {
  try {
    earliestOfDay(text);
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}
