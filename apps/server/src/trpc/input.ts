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

const envelope = z.strictObject({ commandId: z.uuid(), body: z.unknown() });

export interface Envelope<Body> {
  commandId: string;
  body: Body;
  /** Of the body as it was sent, so that the same command id with other content is told apart. */
  inputHash(): Promise<string>;
}

export function parseEnvelope<Schema extends z.ZodMiniType>(schema: Schema, raw: unknown): Envelope<z.output<Schema>> {
  const sent = parseInput(envelope, raw);
  return {
    commandId: sent.commandId,
    body: parseInput(schema, sent.body),
    inputHash: () => inputHashOf(sent.body, sent.commandId),
  };
}
