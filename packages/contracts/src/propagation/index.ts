export * from './batches.ts';
export * from './lists.ts';
