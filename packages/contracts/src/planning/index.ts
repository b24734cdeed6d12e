export * from './demand.ts';
export * from './plan.ts';
export * from './plan-rows.ts';
export * from './tasks.ts';
