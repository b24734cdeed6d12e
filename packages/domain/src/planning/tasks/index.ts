export * from './kinds.ts';
export { isTaskKey } from './key.ts';
export * from './facts.ts';
export type { Task } from './task.ts';
export { dueTasks } from './due-tasks.ts';
