import type { Role } from '@rootclock/domain';
import type * as z from 'zod/mini';
import type { Tx } from '../db/pool.ts';
import type { Touched } from '../db/touched.ts';

/** Who asks, as the session says. */
export interface Caller {
  nurseryId: string;
  personId: string;
  personName: string;
  email: string;
  role: Role;
}

export interface ReadContext {
  tx: Tx;
  nurseryId: string;
  personId: string;
  role: Role;
  /** The calendar day in the nursery's zone, computed once. */
  today: string;
  now: Date;
}

export interface CommandContext extends ReadContext {
  commandId: string;
  version: number;
  /** What the command changed, so that the runner replans it and browsers read it again. */
  touched: Touched;
}

// Method syntax keeps these assignable to a common type: a list of operations holds all kinds of inputs.
export interface Command<Input extends z.ZodMiniType = z.ZodMiniType, Answer = unknown> {
  kind: 'command';
  name: string;
  input: Input;
  roles: readonly Role[];
  run(context: CommandContext, input: z.output<Input>): Promise<Answer>;
}

export interface Query<Input extends z.ZodMiniType = z.ZodMiniType, Answer = unknown> {
  kind: 'query';
  name: string;
  input: Input;
  roles: readonly Role[];
  read(context: ReadContext, input: z.output<Input>): Promise<Answer>;
}

export type Operation = Command | Query;

/** What an operation is sent, before its defaults are filled in. */
export type BodyOf<Op extends { input: z.ZodMiniType }> = z.input<Op['input']>;

export const command = <Input extends z.ZodMiniType, Answer>(definition: Omit<Command<Input, Answer>, 'kind'>): Command<Input, Answer> => ({ kind: 'command', ...definition });
export const query = <Input extends z.ZodMiniType, Answer>(definition: Omit<Query<Input, Answer>, 'kind'>): Query<Input, Answer> => ({ kind: 'query', ...definition });
