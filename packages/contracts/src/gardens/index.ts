export * from './clients.ts';
export * from './pulls.ts';
export type * from './rows.ts';
export type * from './pull-rows.ts';
