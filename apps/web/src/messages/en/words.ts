import { daysOf } from '../days.ts';
import { pluralsOf } from '../plural.ts';

/** The counting and dating of this language, for its message files. */
export const plural = pluralsOf('en');
export const days = daysOf('en');
