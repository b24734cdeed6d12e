export * from './lots.ts';
