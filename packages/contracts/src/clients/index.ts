export * from './clients.ts';
export * from './sites.ts';
export type * from './rows.ts';
