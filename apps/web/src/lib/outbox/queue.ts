/**
 * The outbox as a pure queue. An entry stays in it until the server has answered; a lost answer is asked for again with the same
 * command id, so it never books twice. What the server refuses is parked with its input and with all that depends on it,
 * and the rest goes on.
 */
import { MOST_ENTRIES } from '@rootclock/contracts';
import type { Failure } from '../api/failure.ts';
import { idsIn } from '../ids.ts';

export interface Entry {
  /** The command id: the server lets it take effect once. */
  id: string;
  /** `stock.loseFromLot` */
  name: string;
  /** What people call it; empty where its screen gave it no name. */
  title: string;
  body: unknown;
  /** Only sent while this person is signed in. */
  personId: string;
  /** Milliseconds of the device's clock, for showing. */
  enteredAt: number;
  /** Ids that this entry is the first to mention. */
  creates: readonly string[];
  /** The address of the screen it was typed on. */
  from: string;
  /** A file goes with it, kept in a record beside it; such an entry is sent alone. */
  hasBytes?: boolean;
  tries: number;
  /** Not sent before this millisecond. */
  dueAt: number;
  parked: Parked | null;
}

export type Parked = { kind: 'refused'; failure: Failure } | { kind: 'depends'; on: string };

export type Queue = readonly Entry[];

export type Happening =
  | { kind: 'entered'; entry: Entry; replaces?: string }
  | { kind: 'answered'; id: string }
  | { kind: 'lost'; id: string; now: number }
  | { kind: 'refused'; id: string; failure: Failure }
  | { kind: 'send-again'; id: string }
  | { kind: 'discarded'; id: string }
  | { kind: 'hurried' };

const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 60_000;

/** How long to wait after the n-th unanswered try: doubled each time up to a minute. */
export const pauseAfter = (tries: number): number =>
  Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.max(0, tries - 1));

export function reduce(queue: Queue, happening: Happening): Queue {
  switch (happening.kind) {
    case 'entered':
      return enter(queue, happening.entry, happening.replaces);
    case 'answered':
      return queue
        .filter((entry) => entry.id !== happening.id)
        .map((entry) => (dependsOn(entry, happening.id) ? ready(entry) : entry));
    case 'lost':
      return change(queue, happening.id, (entry) => ({
        ...entry,
        tries: entry.tries + 1,
        dueAt: happening.now + pauseAfter(entry.tries + 1),
      }));
    case 'refused':
      return parkDependants(
        change(queue, happening.id, (entry) => ({ ...entry, parked: { kind: 'refused', failure: happening.failure } })),
        happening.id,
      );
    case 'send-again':
      return change(queue, happening.id, ready);
    case 'discarded':
      return queue.filter((entry) => entry.id !== happening.id);
    case 'hurried':
      return queue.map((entry) => (entry.dueAt === 0 ? entry : { ...entry, dueAt: 0 }));
  }
}

const dependsOn = (entry: Entry, id: string): boolean => entry.parked?.kind === 'depends' && entry.parked.on === id;
const ready = (entry: Entry): Entry => ({ ...entry, parked: null, tries: 0, dueAt: 0 });
const change = (queue: Queue, id: string, how: (entry: Entry) => Entry): Queue =>
  queue.map((entry) => (entry.id === id ? how(entry) : entry));

/** A mended entry takes the place of the refused one, and what depended on that now depends on it. */
function enter(queue: Queue, entry: Entry, replaces: string | undefined): Queue {
  const place = queue.findIndex((each) => each.id === replaces);
  const rest = queue
    .filter((each) => each.id !== replaces)
    .map((each): Entry =>
      replaces !== undefined && dependsOn(each, replaces)
        ? { ...each, parked: { kind: 'depends', on: entry.id } }
        : each,
    );
  if (place >= 0) return [...rest.slice(0, place), entry, ...rest.slice(place)];
  const blocker = rest.find((each) => each.parked && mentionsOneOf(entry, each.creates));
  return [...rest, blocker ? { ...entry, parked: { kind: 'depends', on: blocker.id } } : entry];
}

/** Parks what mentions anything that a parked entry would have created, and what depends on that in turn. */
function parkDependants(queue: Queue, id: string): Queue {
  const missing = new Set(queue.find((entry) => entry.id === id)?.creates);
  return queue.map((entry): Entry => {
    if (entry.id === id || entry.parked || !mentionsOneOf(entry, missing)) return entry;
    for (const created of entry.creates) missing.add(created);
    return { ...entry, parked: { kind: 'depends', on: id } };
  });
}

function mentionsOneOf(entry: Entry, ids: Iterable<string>): boolean {
  const mentioned = idsIn(entry.body);
  for (const id of ids) if (mentioned.has(id)) return true;
  return false;
}

/** Whether an entry cannot be on its way: it, or one that goes before it, has been tried in vain. */
export function isStalled(queue: Queue, id: string | null): boolean {
  const place = queue.findIndex((entry) => entry.id === id);
  return queue.slice(0, place + 1).some((entry) => !entry.parked && entry.tries > 0);
}

export type Step = { kind: 'send'; entries: readonly Entry[] } | { kind: 'wait'; ms: number } | { kind: 'idle' };

/**
 * What to do now for the person signed in: the first entry that is not parked goes first, those right behind it go with it, and nothing
 * overtakes it.
 */
export function nextStep(queue: Queue, personId: string | null, now: number): Step {
  const own = queue.filter((entry) => !entry.parked && entry.personId === personId);
  const [head] = own;
  if (!head) return { kind: 'idle' };
  // No pause is that long: the device's clock was set back since.
  const isOfAnotherClock = head.dueAt - now > LONGEST_PAUSE_MS;
  if (head.dueAt > now && !isOfAnotherClock) return { kind: 'wait', ms: head.dueAt - now };
  return { kind: 'send', entries: togetherFrom(head, own) };
}

/** With room for what the server takes in one request beside the bodies. */
const MOST_BYTES = 160 * 1024;
const sizeOf = (entry: Entry): number => new TextEncoder().encode(JSON.stringify(entry.body ?? null)).length;

/** What goes in one request. An entry that was tried in vain goes alone, so that it cannot hold up others by its size or its fault. */
function togetherFrom(head: Entry, own: readonly Entry[]): readonly Entry[] {
  const mayShare = (entry: Entry) => entry.tries === 0 && !entry.hasBytes;
  if (!mayShare(head)) return [head];
  const together: Entry[] = [];
  let bytes = 0;
  for (const entry of own) {
    bytes += sizeOf(entry);
    const isFull = together.length === MOST_ENTRIES || bytes > MOST_BYTES;
    if (together.length > 0 && (isFull || !mayShare(entry))) break;
    together.push(entry);
  }
  return together;
}

/** The ids of those before an entry in one request that create what it mentions. */
export const dependedOnBy = (entry: Entry, before: readonly Entry[]): string[] =>
  before.filter(({ creates }) => mentionsOneOf(entry, creates)).map(({ id }) => id);
