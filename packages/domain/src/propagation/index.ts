export * from './words.ts';
export * from './batch-clocks.ts';
export * from './counting.ts';
export * from './batch-state.ts';
export * from './forecast.ts';
export * from './protocol/stages.ts';
export * from './protocol/season.ts';
export * from './protocol/schedule.ts';
