export * from './order-words.ts';
export * from './rules.ts';
export * from './habit.ts';
export * from './alternatives-by-rule.ts';
