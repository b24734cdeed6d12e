export * from './reservations.ts';
export * from './reasons.ts';
export type * from './rows.ts';
