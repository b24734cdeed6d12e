export * from './previews.ts';
export * from './rules.ts';
export type * from './rows.ts';
export * from './windows.ts';
