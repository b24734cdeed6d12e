/**
 * Ids are made here, before anything is sent, so that an entry can name what it creates while the phone is offline.
 * `crypto.randomUUID` exists only on https and localhost; a nursery's own server on the local net is neither.
 */
const unclaimed = new Set<string>();

function randomUuid(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

/** A new id for something that the next command creates. */
export function newId(): string {
  const id = randomUuid();
  unclaimed.add(id);
  return id;
}

/** A new id for a command itself. */
export const newCommandId = randomUuid;

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

/** Every id that a body mentions. */
export const idsIn = (body: unknown): Set<string> => new Set(JSON.stringify(body ?? null).match(UUID) ?? []);

/** The ids made here that this body is the first to mention: what it creates, and what later entries may depend on. */
export function claimCreated(body: unknown): string[] {
  const created = [...idsIn(body)].filter((id) => unclaimed.has(id));
  for (const id of created) unclaimed.delete(id);
  return created;
}
