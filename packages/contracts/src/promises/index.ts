export * from './check.ts';
export * from './explanation.ts';
export * from './losses.ts';
export * from './reservations.ts';
export * from './reasons.ts';
export type * from './rows.ts';
export * from './what-if.ts';
