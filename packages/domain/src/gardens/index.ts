export * from './order-words.ts';
