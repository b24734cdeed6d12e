import { daysOf } from '../days.ts';
import { pluralsOf } from '../plural.ts';

/** The counting and dating of this language, for its message files. */
export const plural = pluralsOf('es');
export const days = daysOf('es');
