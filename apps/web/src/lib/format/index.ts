export type { Dates } from './dates.ts';
export type { Measures } from './measures.ts';
export type { Numbers } from './numbers.ts';
export { useFormat } from './use-format.ts';
