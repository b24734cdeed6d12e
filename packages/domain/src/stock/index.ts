export * from './ledger-words.ts';
export * from './accounts.ts';
export * from './drawing.ts';
