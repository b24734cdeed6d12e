export * from './batches.ts';
export * from './lists.ts';
export * from './protocols/index.ts';
export * from './learning.ts';
