import {
  InputError,
  YEARS,
  bookableGrams,
  earliestOfDay,
  isCalendarDate,
  isMonthDay,
  isWithinYears,
  toMilligram,
} from '@rootclock/domain';
import * as z from 'zod/mini';

// The building blocks of inputs. Sentences for people are the web's: here each failure only has its kind.

export const id = z.uuid();

const isWhole = (value: string) => !value.includes('\0') && !/\p{Surrogate}/u.test(value);

/**
 * Any text, and the only way to one: the database keeps no NUL, and half of a surrogate pair would come back as another character than was
 * sent. What else is asked of a text follows.
 */
export const text = (...checks: Parameters<z.ZodMiniString['check']>) =>
  z.string().check(z.refine(isWhole, { params: { problem: 'broken-text' }, abort: true }), ...checks);

const nearYear = z.refine<string>(isWithinYears, { params: { problem: 'far-year', ...YEARS } });

/** Plants, trays, cells: whole units above zero. */
export const units = z.int().check(z.gte(1), z.lte(10_000_000));
/** Whole units from zero on. */
export const unitsOrNone = z.int().check(z.gte(0), z.lte(10_000_000));

/** Seed by weight: above nothing, read to the milligram that stores are kept to. */
const MOST_GRAMS = 10_000_000;
export const grams = z.pipe(z.number().check(z.gt(0), z.lte(MOST_GRAMS)), z.transform(bookableGrams));
/** Seed by weight, or that there is none. */
export const gramsOrNone = z.pipe(z.number().check(z.gte(0), z.lte(MOST_GRAMS)), z.transform(toMilligram));

/**
 * Seeds in a gram: from seeds of 100 g, far heavier than a black walnut in its shell, to the dust seeds of orchids, of which the lightest weigh
 * about 0.3 µg (J. Arditti and A. K. A. Ghani, New Phytologist 145, 2000; from memory).
 */
export const seedsPerGram = z.number().check(z.gte(0.01), z.lte(5_000_000));

/** A part of a whole, 0 to 1; people say it in per cent. */
export const share = z
  .number()
  .check(z.refine((value) => value >= 0 && value <= 1, { params: { problem: 'not-a-share' } }));

/** The part of seed's weight that is seed: of what is none no weight gives a plant. */
export const purity = z
  .number()
  .check(z.refine((value) => value >= 0.001 && value <= 1, { params: { problem: 'not-a-purity' } }));

export const calendarDate = text(
  z.refine(isCalendarDate, { params: { problem: 'not-a-date' }, abort: true }),
  nearYear,
);
/** An instant with its offset, such as 2026-05-20T18:30:00Z. */
export const instant = z.iso.datetime({ offset: true, abort: true }).check(nearYear);
export const monthDay = text(z.refine(isMonthDay, { params: { problem: 'not-a-date' } }));

/** A day, or only a month, season or year: '2026-04-14', '2026-04', '2026-spring', '2026'. */
export const roughDay = text(z.refine(isRoughDay, { params: { problem: 'not-a-date' }, abort: true }), nearYear);

/** Of a far year only that is said, so whether it is written as a day is asked of a near one. */
function isRoughDay(value: string): boolean {
  if (/^\d{4}/.test(value) && !isWithinYears(value)) return isRoughDay(`${YEARS.least}${value.slice(4)}`);
  try {
    earliestOfDay(value);
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

export const shortText = text(z.trim(), z.minLength(1), z.maxLength(120));
export const longText = text(z.trim(), z.maxLength(2000));
/** A text that may be left out or left empty; empty becomes null. */
export const optionalText = z.optional(
  z.nullable(
    z.pipe(
      text(z.trim(), z.maxLength(500)),
      z.transform((typed: string) => (typed === '' ? null : typed)),
    ),
  ),
);

/**
 * What goes with the edit of a row: the edition at which its form read it, and of each field that the person changed what it held then. Rows begin
 * at edition 1; an entry that names none counts as typed over a row that nobody else had edited yet.
 */
export const asRead = {
  edition: z.optional(z.int().check(z.gte(0), z.lte(2_147_483_647))),
  was: z.optional(z.record(text(z.maxLength(60)), z.unknown())),
};

export const page = {
  /** Which page of a list, from 1. */
  page: z._default(z.int().check(z.gte(1), z.lte(100_000)), 1),
  perPage: z._default(z.int().check(z.gte(1), z.lte(200)), 50),
};

/** One page of a long list, with the number of rows that match in all. */
export interface Page<Row> {
  rows: Row[];
  total: number;
  page: number;
  perPage: number;
}
