import { createHash, scryptSync } from 'node:crypto';
import { readInput } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { Refusal } from '../refusal.ts';

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
  inputHash: string;
}

export function parseEnvelope<Schema extends z.ZodMiniType>(schema: Schema, raw: unknown): Envelope<z.output<Schema>> {
  const sent = parseInput(envelope, raw);
  return {
    commandId: sent.commandId,
    personId: sent.personId,
    body: parseInput(schema, sent.body),
    get inputHash() {
      return hashOf(sent.body, sent.commandId);
    },
  };
}

/** Whose entry an envelope says it carries, before anything else of it is looked at. */
export function personIn(raw: unknown): string | undefined {
  const personId = typeof raw === 'object' && raw !== null && 'personId' in raw ? raw.personId : undefined;
  return typeof personId === 'string' ? personId : undefined;
}

const hashOf = (value: unknown, salt: string) => createHash('sha256').update(canonical(value, salt)).digest('hex');

/** Fields that are hashed slowly first: the log of commands must not be a way to guess passwords at speed. */
const SECRETS = new Set(['password', 'currentPassword']);
const slowly = (secret: string, salt: string) => scryptSync(secret, salt, 32).toString('hex');

/** JSON with sorted keys: the order in which a browser wrote the fields is no content. */
function canonical(value: unknown, salt: string): string {
  if (Array.isArray(value)) return `[${value.map((each) => canonical(each, salt)).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const entries = Object.entries(value).filter(([, v]) => v !== undefined).sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, v]) => `${JSON.stringify(key)}:${canonical(SECRETS.has(key) && typeof v === 'string' ? slowly(v, salt) : v, salt)}`).join(',')}}`;
  }
  return JSON.stringify(value ?? null);
}
