export * from './order-words.ts';
export * from './substitutes/index.ts';
