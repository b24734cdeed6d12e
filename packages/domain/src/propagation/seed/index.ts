export * from './pure-live-seed.ts';
export * from './cells.ts';
export * from './units-to-start.ts';
export * from './amounts.ts';
export * from './viability.ts';
export * from './germination-course.ts';
export * from './degree-days.ts';
