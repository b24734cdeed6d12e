export * from './board.ts';
export type * from './board-rows.ts';
export * from './previews.ts';
export * from './rules.ts';
export type * from './rows.ts';
export * from './windows.ts';
