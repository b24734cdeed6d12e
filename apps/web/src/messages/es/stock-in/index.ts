import { intake } from './intake.ts';
import { places } from './places.ts';
import { table } from './table.ts';
import { words } from './words.ts';

export const stockIn = { ...words, intake, places, table };
