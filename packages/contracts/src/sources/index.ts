export * from './sources.ts';
