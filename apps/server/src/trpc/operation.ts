import type { Role } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { Tx } from '../db/pool.ts';
import type { Touched } from '../db/touched.ts';
import type { NurseryFiles } from '../files/file-store.ts';

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
  files: NurseryFiles;
  /** What the command changed, so that the runner replans it and browsers read it again. */
  touched: Touched;
}

/** A row as its form reads it: the fields of the command's body, without those that only say which row is meant. */
export const storedRow = z.strictObject({
  edition: z.number(),
  fields: z.record(z.string(), z.unknown()),
});
export type StoredRow = z.infer<typeof storedRow>;

/** How an editing command finds its row. A row that is not there is the command's own to refuse. */
export interface Edits<Body> {
  /** Fields that were not sent stay as they are; elsewhere they are emptied. */
  partial: boolean;
  load(context: ReadContext, body: Body): Promise<StoredRow | null>;
  /** Answers the new edition, which a statement of the same command may have set already. */
  raise(context: CommandContext, body: Body, from: number): Promise<number>;
}

// Method syntax keeps these assignable to a common type: a list of operations holds all kinds of inputs.
export interface Command<Input extends z.ZodMiniType = z.ZodMiniType, Answer = unknown, Prepared = z.output<Input>> {
  kind: 'command';
  name: string;
  input: Input;
  roles: readonly Role[];
  /** The row that it edits in place, where it is one that carries an edition: made by `editing`. */
  edits?: Edits<z.output<Input>>;
  /**
   * Makes ready what was sent before the transaction begins: for work that takes so long that the nursery must not be locked meanwhile.
   * It is given nothing to read with, and only the store to put files into. Most commands take what was sent as it is.
   */
  before(body: z.output<Input>, files: NurseryFiles): Prepared | Promise<Prepared>;
  run(context: CommandContext, input: Prepared): Promise<Answer>;
}

export interface Query<Input extends z.ZodMiniType = z.ZodMiniType, Answer = unknown, Loaded = Answer> {
  kind: 'query';
  name: string;
  input: Input;
  roles: readonly Role[];
  /** Reckons for long: a person has only a few of these answered at a time. */
  isHeavy?: true;
  read(context: ReadContext, input: z.output<Input>): Promise<Loaded>;
  /**
   * Makes the answer of what was read, once the transaction has ended: for work that takes so long that it must hold no connection meanwhile.
   * It is given nothing to read with. Most queries answer what they read as it is.
   */
  after(loaded: Loaded): Answer | Promise<Answer>;
}

export type Operation = Command | Query;

/** What an operation is sent, before its defaults are filled in. */
export type BodyOf<Op extends { input: z.ZodMiniType }> = z.input<Op['input']>;

export const command = <Input extends z.ZodMiniType, Answer>(
  definition: Omit<Command<Input, Answer>, 'kind' | 'before'>,
): Command<Input, Answer> => ({ kind: 'command', ...definition, before: (body) => body });
/** A command with a `before` step. */
export const commandPrepared = <Input extends z.ZodMiniType, Answer, Prepared>(
  definition: Omit<Command<Input, Answer, Prepared>, 'kind'>,
): Command<Input, Answer, Prepared> => ({ kind: 'command', ...definition });

type Definition<Input extends z.ZodMiniType, Answer, Loaded> = Omit<Query<Input, Answer, Loaded>, 'kind' | 'after'>;

export const query = <Input extends z.ZodMiniType, Answer>(
  definition: Definition<Input, Answer, Answer>,
): Query<Input, Answer> => ({ kind: 'query', ...definition, after: (loaded) => loaded });
/** A query with an `after` step. */
export const queryThen = <Input extends z.ZodMiniType, Loaded, Answer>(
  definition: Definition<Input, Answer, Loaded> & Pick<Query<Input, Answer, Loaded>, 'after'>,
): Query<Input, Answer, Loaded> => ({ kind: 'query', ...definition });
