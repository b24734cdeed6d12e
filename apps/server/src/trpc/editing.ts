/**
 * A command that edits a row in place. Its body carries the edition at which the row was read, and what the fields held that the person changed. Is the
 * row another by now, then each field goes to whoever changed it; one that both changed is refused with both values, and nothing is written.
 */
import { type Edited, saysTheSame } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { loadCalled, loadEditor } from '../db/editions.ts';
import { refuse } from '../refusal.ts';
import {
  command,
  commandPrepared,
  type Command,
  type CommandContext,
  type Edits,
  type StoredRow,
} from './operation.ts';

type Fields = Record<string, unknown>;
type Editor = Awaited<ReturnType<typeof loadEditor>>;
const FIRST_EDITION = 1;

/** What every edit carries beside its own fields. */
interface Sent {
  edition?: number | undefined;
  was?: Fields | undefined;
}

interface Definition<Input extends z.ZodMiniType<Sent>, Answer> extends Omit<
  Command<Input, Answer>,
  'kind' | 'edits' | 'before'
> {
  edits: Edits<z.output<Input>>;
}

/** A command whose answer tells the edition that it made, so that the same form can go on from there. */
export function editing<Input extends z.ZodMiniType<Sent>, Answer extends object>({
  edits,
  run,
  ...rest
}: Definition<Input, Answer>) {
  return command({ ...rest, edits, run: edited(edits, rest.input, run) });
}

interface PreparedDefinition<Input extends z.ZodMiniType<Sent>, Answer, Ready> extends Omit<
  Definition<Input, Answer>,
  'run'
> {
  /** As of a command: what takes too long for a locked nursery. */
  before(body: z.output<Input>): Promise<Ready>;
  run(context: CommandContext, body: z.output<Input>, ready: Ready): Promise<Answer>;
}

/** The same with a `before` step. */
export function editingPrepared<Input extends z.ZodMiniType<Sent>, Answer extends object, Ready>(
  definition: PreparedDefinition<Input, Answer, Ready>,
) {
  const { edits, before, run, ...rest } = definition;
  return commandPrepared({
    ...rest,
    edits,
    before: async (body) => ({ body, ready: await before(body) }),
    run: (context, { body, ready }) =>
      edited(edits, rest.input, (inside, settled) => run(inside, settled, ready))(context, body),
  });
}

function edited<Input extends z.ZodMiniType<Sent>, Answer extends object>(
  edits: Edits<z.output<Input>>,
  schema: Input,
  run: (context: CommandContext, body: z.output<Input>) => Promise<Answer>,
) {
  return async (context: CommandContext, input: z.output<Input>): Promise<Answer & { edition: number }> => {
    const row = await edits.load(context, input);
    const body = row ? await settle(context, edits, schema, input, row) : input;
    const answer = await run(context, body);
    const edition = row?.edition ?? (await edits.load(context, input))?.edition ?? 1;
    return {
      ...answer,
      edition:
        row && saysTheSame(wanted(edits, row, body), row.fields) ? edition : await edits.raise(context, input, edition),
    };
  };
}

/** The body as it is to be written: the fields that were not the person's own are as they now stand. */
async function settle<Body extends Sent>(
  context: CommandContext,
  edits: Edits<Body>,
  schema: z.ZodMiniType<Sent>,
  body: Body,
  row: StoredRow,
): Promise<Body> {
  if (body.edition === row.edition) return body;
  const editor = await loadEditor(context, row.edition);
  // Without an edition only what others saved could be lost unseen: nobody is asked about what they themselves saved before.
  const read = body.edition ?? (editor.personId === context.personId ? row.edition : FIRST_EDITION);
  if (read === row.edition) return body;
  const sent = wanted(edits, row, body);
  const before = body.was && asParsed(schema, body, body.was);
  const isTheirs = (field: string) => before !== undefined && !Object.hasOwn(before, field);
  const untouched = (field: string) => before !== undefined && saysTheSame(before[field], row.fields[field]);
  const clashing = Object.keys(row.fields).filter(
    (field) => !isTheirs(field) && !saysTheSame(sent[field], row.fields[field]) && !untouched(field),
  );
  if (clashing.length > 0) refuse('edited-meanwhile', await conflict(context, row, sent, clashing, editor));
  const kept = Object.keys(sent)
    .filter((field) => isTheirs(field))
    .map((field) => [field, row.fields[field]]);
  return { ...body, ...Object.fromEntries(kept) };
}

async function conflict(
  context: CommandContext,
  row: StoredRow,
  sent: Fields,
  clashing: string[],
  { by, at }: Editor,
): Promise<Edited> {
  return {
    edition: row.edition,
    by,
    at,
    fields: clashing.map((field) => ({ field, stored: row.fields[field] ?? null, sent: sent[field] ?? null })),
    stored: row.fields,
    called: await loadCalled(context, [row.fields, sent]),
  };
}

/** What the body asks each field of the row to be. */
function wanted<Body>(edits: Edits<Body>, row: StoredRow, body: Body): Fields {
  const sent = body as Fields;
  return Object.fromEntries(
    Object.entries(row.fields).map(([field, stored]) => [
      field,
      sent[field] === undefined ? (edits.partial ? stored : null) : sent[field],
    ]),
  );
}

/** What was read, in the form that the contract gives to what is sent: trimmed, and with its defaults. */
function asParsed(schema: z.ZodMiniType, body: Sent, was: Fields): Fields {
  const whole = z.safeParse(schema, { ...body, ...was });
  return whole.success
    ? Object.fromEntries(Object.keys(was).map((field) => [field, (whole.data as Fields)[field]]))
    : was;
}
