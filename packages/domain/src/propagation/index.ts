export * from './words.ts';
export * from './batch-clocks.ts';
export * from './counting.ts';
export * from './batch-state.ts';
export * from './forecast.ts';
