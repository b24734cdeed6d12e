import { InputError, bookableGrams, earliestOfDay, isCalendarDate, isMonthDay, toMilligram } from '@rootclock/domain';
import * as z from 'zod/mini';

// The building blocks of inputs. Sentences for people are the web's: here each failure only has its kind.

export const id = z.uuid();

/** Plants, trays, cells: whole units above zero. */
export const units = z.int().check(z.gte(1), z.lte(10_000_000));
/** Whole units from zero on. */
export const unitsOrNone = z.int().check(z.gte(0), z.lte(10_000_000));

/** Seed by weight: above nothing, read to the milligram that stores are kept to. */
const MOST_GRAMS = 10_000_000;
export const grams = z.pipe(z.number().check(z.gt(0), z.lte(MOST_GRAMS)), z.transform(bookableGrams));
/** Seed by weight, or that there is none. */
export const gramsOrNone = z.pipe(z.number().check(z.gte(0), z.lte(MOST_GRAMS)), z.transform(toMilligram));

/** A part of a whole, 0 to 1; people say it in per cent. */
export const share = z.number().check(z.refine((value) => value >= 0 && value <= 1, { params: { problem: 'not-a-share' } }));

export const calendarDate = z.string().check(z.refine(isCalendarDate, { params: { problem: 'not-a-date' } }));
export const monthDay = z.string().check(z.refine(isMonthDay, { params: { problem: 'not-a-date' } }));

/** A day, or only a month, season or year: '2026-04-14', '2026-04', '2026-spring', '2026'. */
export const roughDay = z.string().check(z.refine(isRoughDay, { params: { problem: 'not-a-date' } }));

function isRoughDay(value: string): boolean {
  try {
    earliestOfDay(value);
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

export const shortText = z.string().check(z.trim(), z.minLength(1), z.maxLength(120));
export const longText = z.string().check(z.trim(), z.maxLength(2000));
/** A text that may be left out or left empty; empty becomes null. */
export const optionalText = z.optional(z.nullable(z.pipe(z.string().check(z.trim(), z.maxLength(500)), z.transform((text: string) => (text === '' ? null : text)))));

/**
 * What goes with the edit of a row: the edition at which its form read it, and of each field that the person changed what it held then. Rows begin
 * at edition 1; an entry that names none counts as typed over a row that nobody else had edited yet.
 */
export const asRead = {
  edition: z.optional(z.int().check(z.gte(0), z.lte(2_147_483_647))),
  was: z.optional(z.record(z.string().check(z.maxLength(60)), z.unknown())),
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
