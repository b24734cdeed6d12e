export * from './kinds.ts';
export { isTaskKey } from './key.ts';
export * from './facts.ts';
export type { Task } from './task.ts';
export { dueTasks } from './due-tasks.ts';
export { LOOK_AGAIN_DAYS } from './due/lot-tasks.ts';
export { FOLLOW_UP_LAPSES_DAYS } from './due/garden-tasks.ts';
