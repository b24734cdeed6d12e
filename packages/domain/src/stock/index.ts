export * from './ledger-words.ts';
export * from './intake-words.ts';
export * from './accounts.ts';
export * from './drawing.ts';
export * from './laws.ts';
export * from './pairing.ts';
export * from './merging.ts';
export * from './recount.ts';
