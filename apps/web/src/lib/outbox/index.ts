export { onParked, outbox } from './browser-outbox.ts';
export { isMending, startMending } from './mending.ts';
export type { Entry } from './queue.ts';
export { useCommand, type CommandHandle, type CommandState } from './use-command.ts';
export { useDirectCommand } from './use-direct-command.ts';
export { useOnline, useOutbox } from './use-outbox.ts';
