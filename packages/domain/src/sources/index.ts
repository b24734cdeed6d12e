export * from './source-words.ts';
export * from './seed-words.ts';
export * from './grams.ts';
export * from './seed-cautions.ts';
export * from './blending.ts';
export * from './pesticide-denial.ts';
