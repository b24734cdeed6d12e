import { daysOf } from '../days.ts';
import { pluralsOf } from '../plural.ts';
import { gramsOf, sharesOf } from '../weights.ts';

/** The counting, dating and weighing of this language, for its message files. */
export const plural = pluralsOf('es');
export const days = daysOf('es');
export const grams = gramsOf('es');
export const percent = sharesOf('es');
