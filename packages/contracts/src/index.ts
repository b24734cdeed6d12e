export * from './errors/index.ts';
export * as fields from './fields.ts';
export type { Page } from './fields.ts';
export * as gardens from './gardens/index.ts';
export { readInput, type ReadInput } from './issues.ts';
export * as people from './people.ts';
export * as promises from './promises/index.ts';
export * as stock from './stock/index.ts';
