import { ROLES, type Role } from '@rootclock/domain';
import * as z from 'zod/mini';
import { filesOf, type FileStore, noFiles } from '../files/file-store.ts';
import { Refusal, refuse } from '../refusal.ts';
import type { Caller, Command, CommandContext, Query } from '../trpc/operation.ts';
import { dayIn } from './day-in.ts';
import { databaseFailure, isWorthRetrying } from './failure.ts';
import { createOwnWrites, type OwnWritesParts, type Written } from './writing/own-writes.ts';
import type { Tx } from './pool.ts';
import { readOnce } from './reading.ts';
import { ReckonFirst } from './writing/reckon-first.ts';
import { Touched } from './writing/touched.ts';

/** Reckons anew what a command touched, in the command's own transaction. */
export type Replan = (context: CommandContext, rulesVersion: number) => Promise<void>;

/** Takes out of the store what a command left unneeded, once the command has committed. */
export type LetGo = (nurseryId: string, hashes: readonly string[]) => Promise<void>;

export interface RunnerParts extends Omit<OwnWritesParts, 'write'> {
  /** Where commands find what was sent beside them. */
  files?: FileStore;
  letGo?: LetGo;
  replan: Replan;
}

const begunRow = z.strictObject({
  version: z.number(),
  zone: z.string(),
  rules_version: z.number(),
  rolled_on: z.nullable(z.string()),
  known_name: z.nullable(z.string()),
  known_person: z.nullable(z.string()),
  known_hash: z.nullable(z.string()),
  known_answer: z.unknown(),
  standing: z.nullable(z.enum(ROLES)),
});

/** Leaves the transaction without a trace, carrying the answer that was stored when the command first took effect. */
class AlreadyAnswered extends Error {
  constructor(readonly answer: unknown) {
    super('already answered');
  }
}
class DayNotRolled extends Error {
  constructor(readonly today: string) {
    super('day not rolled');
  }
}

const MOST_TRIES = 4;
/** So often a command is run again after something was reckoned for it; others' entries may move the same promises each time. */
const MOST_RECKONINGS = 6;

export type Runner = ReturnType<typeof createRunner>;

/** The only way to write. One transaction: lock the nursery, look the command up, run, replan, log, notify. */
export function createRunner({
  database,
  files = noFiles,
  letGo = async () => {},
  replan,
  rollDay,
  foreseeRoll,
  clock,
  lookAheadFailed,
}: RunnerParts) {
  async function execute<Input extends z.ZodMiniType, Answer, Prepared>(
    operation: Command<Input, Answer, Prepared>,
    caller: Caller,
    commandId: string,
    body: Prepared,
    inputHash: string,
    now: Date,
    isRoll: boolean,
  ): Promise<Written<Answer>> {
    const touched = new Touched();
    const done = await database.transaction(async (tx) => {
      const begun = await tx.row(
        begunRow,
      )`SELECT * FROM begin_command(${caller.nurseryId}::uuid, ${commandId}::uuid, nullif(${caller.personId}, '')::uuid)`;
      const state = begun ?? refuse('not-found', { what: 'nursery' });
      // While this write waited for the nursery its person may have been removed, or given another role; a day rolls for nobody.
      const role = isRoll ? caller.role : (state.standing ?? refuse('not-signed-in', undefined));
      if (state.known_name !== null) {
        if (
          state.known_name !== operation.name ||
          (state.known_person ?? '') !== caller.personId ||
          state.known_hash !== inputHash
        ) {
          refuse('command-id-reused', { command: state.known_name });
        }
        throw new AlreadyAnswered(state.known_answer);
      }
      if (!isRoll) requireRole(operation.roles, role);
      const today = dayIn(now, state.zone);
      if (!isRoll && (state.rolled_on === null || state.rolled_on < today)) throw new DayNotRolled(today);
      const context: CommandContext = {
        tx,
        nurseryId: caller.nurseryId,
        personId: caller.personId,
        role,
        today,
        now,
        commandId,
        version: state.version,
        touched,
        files: filesOf(files, caller.nurseryId),
      };
      const answer = await operation.run(context, body);
      await replan(context, state.rules_version);
      await log(tx, context, operation.name, caller, inputHash, answer);
      return { answer, isStale: touched.leavesPlanStale };
    });
    if (touched.lettingGo.size > 0) await letGo(caller.nurseryId, [...touched.lettingGo]);
    return done;
  }

  async function withRetries<Answer>(attempt: () => Promise<Written<Answer>>): Promise<Written<Answer>> {
    let reckoned = 0;
    for (let tried = 1; ; tried++) {
      try {
        return await attempt();
      } catch (error) {
        if (error instanceof AlreadyAnswered) return { answer: error.answer as Answer, isStale: false };
        if (error instanceof ReckonFirst) {
          if (reckoned++ === MOST_RECKONINGS) throw ReckonFirst.tooOften();
          await error.reckon();
          tried = 0;
          continue;
        }
        if (error instanceof Refusal || error instanceof DayNotRolled) throw error;
        if (tried >= MOST_TRIES || !isWorthRetrying(databaseFailure(error))) throw error;
      }
    }
  }

  const own = createOwnWrites({
    database,
    rollDay,
    foreseeRoll,
    clock,
    ...(lookAheadFailed && { lookAheadFailed }),
    write: (operation, caller, commandId, inputHash, now) =>
      withRetries(() => execute(operation, caller, commandId, null, inputHash, now, true)),
  });

  async function run<Input extends z.ZodMiniType, Answer, Prepared>(
    operation: Command<Input, Answer, Prepared>,
    caller: Caller,
    commandId: string,
    body: z.output<Input>,
    inputHash: string,
  ): Promise<Answer> {
    requireRole(operation.roles, caller.role);
    const now = clock();
    const prepared = await operation.before(body, filesOf(files, caller.nurseryId));
    const attempt = async () => {
      const written = await withRetries(() => execute(operation, caller, commandId, prepared, inputHash, now, false));
      if (written.isStale) own.plans.want(caller.nurseryId);
      return written.answer;
    };
    try {
      return await attempt();
    } catch (error) {
      if (!(error instanceof DayNotRolled)) throw error;
      await own.roll(caller, error.today, now);
      return attempt();
    }
  }

  async function read<Input extends z.ZodMiniType, Answer, Loaded>(
    operation: Query<Input, Answer, Loaded>,
    caller: Caller,
    input: z.output<Input>,
  ): Promise<Answer> {
    requireRole(operation.roles, caller.role);
    const now = clock();
    const loaded = await readOnce(database, caller.nurseryId, (tx, zone) => {
      const today = dayIn(now, zone ?? refuse('not-found', { what: 'nursery' }));
      return operation.read(
        { tx, nurseryId: caller.nurseryId, personId: caller.personId, role: caller.role, today, now },
        input,
      );
    });
    // Only now is the connection free again for others.
    return operation.after(loaded);
  }

  return { run, read, roll: own.roll, plans: own.plans, clock };
}

export function requireRole(allowed: readonly Role[], role: Role): void {
  if (!allowed.includes(role)) refuse('not-allowed', { role, needs: [...allowed] });
}

async function log(
  tx: Tx,
  context: CommandContext,
  name: string,
  caller: Caller,
  inputHash: string,
  answer: unknown,
): Promise<void> {
  const change = JSON.stringify({
    nursery: caller.nurseryId,
    version: context.version,
    features: [...context.touched.features],
  });
  await tx.run`
    WITH logged AS (
      INSERT INTO command (nursery_id, id, version, name, person_id, input_hash, answer, recorded_at)
      VALUES (${caller.nurseryId}::uuid, ${context.commandId}::uuid, ${context.version}, ${name}, nullif(${caller.personId}, '')::uuid, ${inputHash},
              ${JSON.stringify(answer ?? null)}::jsonb, ${context.now}))
    SELECT pg_notify('rootclock', ${change})::text`;
}
