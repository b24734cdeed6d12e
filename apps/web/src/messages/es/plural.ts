import { pluralsOf } from '../plural.ts';

export const plural = pluralsOf('es');
