import * as z from 'zod/mini';

/** What a commit told: whose nursery changed, to which version, and which features to read again. */
export interface Change {
  nursery: string;
  version: number;
  features: string[];
}

/** What the end of a session told: whose it was. */
export interface SessionEnd {
  nursery: string;
  person: string;
}

const change = z.object({
  nursery: z.uuid(),
  version: z.int().check(z.nonnegative()),
  features: z.array(z.string().check(z.maxLength(40))).check(z.maxLength(40)),
});
const sessionEnd = z.strictObject({ nursery: z.uuid(), person: z.uuid() });

/** Reads a notification; null for one that is not of ours, which anybody with a connection may have sent. */
export function readTold(payload: string): Change | SessionEnd | null {
  try {
    const read = z.union([change, sessionEnd]).safeParse(JSON.parse(payload));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}
