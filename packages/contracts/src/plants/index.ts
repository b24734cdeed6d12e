export * from './containers.ts';
export * from './facts.ts';
export * from './names.ts';
export * from './plants.ts';
export type * from './rows.ts';
