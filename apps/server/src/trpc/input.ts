import { readInput } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { Refusal } from '../refusal.ts';
import { inputHashOf } from './input-hash.ts';

/** Parses what was sent, or refuses with one issue a field. Sentences are the web's; here each issue only has its kind and bounds. */
export function parseInput<Schema extends z.ZodMiniType>(schema: Schema, raw: unknown, prefix = ''): z.output<Schema> {
  const result = readInput(schema, raw, prefix);
  if (result.ok) return result.data;
  throw new Refusal('invalid-input', { issues: result.issues }, result.issues[0]?.path || undefined);
}

/** What a page of before the envelope named the person sends goes out under its session's person, as it always did. */
const envelope = z.strictObject({ commandId: z.uuid(), personId: z.optional(z.uuid()), body: z.unknown() });

export interface Envelope<Body> {
  commandId: string;
  /** Whose entry it is, where the envelope says so. */
  personId?: string | undefined;
  body: Body;
  /** Of the body as it was sent, so that the same command id with other content is told apart. */
  inputHash(): Promise<string>;
}

export function parseEnvelope<Schema extends z.ZodMiniType>(schema: Schema, raw: unknown): Envelope<z.output<Schema>> {
  const sent = parseInput(envelope, raw);
  return {
    commandId: sent.commandId,
    personId: sent.personId,
    body: parseInput(schema, sent.body),
    inputHash: () => inputHashOf(sent.body, sent.commandId),
  };
}

/** Whose entry an envelope says it carries, before anything else of it is looked at. */
export function personIn(raw: unknown): string | undefined {
  const personId = typeof raw === 'object' && raw !== null && 'personId' in raw ? raw.personId : undefined;
  return typeof personId === 'string' ? personId : undefined;
}
