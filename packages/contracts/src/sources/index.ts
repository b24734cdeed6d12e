export * from './sources.ts';
export * from './seed.ts';
