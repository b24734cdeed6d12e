export * from './lots.ts';
export * from './intake.ts';
export * from './places.ts';
export * from './table.ts';
export * from './reversal.ts';
export * from './treatments.ts';
export * from './winter.ts';
