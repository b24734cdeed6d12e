export * from './clients.ts';
export * from './sites.ts';
export * from './orders.ts';
export * from './pulls.ts';
export * from './substitutes.ts';
export * from './kits.ts';
export type * from './rows.ts';
export type * from './pull-rows.ts';
