export * from './protocols.ts';
export type * from './rows.ts';
