export * from './ledger-words.ts';
export * from './intake-words.ts';
export * from './accounts.ts';
export * from './drawing.ts';
export * from './laws.ts';
