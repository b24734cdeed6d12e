/** A kept entry in words: its own title or the command's name spelled out, and what was typed. */
import type { Entry } from '../lib/outbox/index.ts';
import type { Fact } from '../ui/layout/index.ts';

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** `lostUnits` as "lost units", `stock.loseFromLot` as "lose from lot". */
const spelled = (name: string): string => name.replaceAll(/([A-Z])/g, ' $1').toLowerCase();

export function nameOf(entry: Pick<Entry, 'name' | 'title'>): string {
  if (entry.title) return entry.title;
  const words = spelled(entry.name.split('.').at(-1) ?? entry.name);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What goes with an edit and was not typed. */
const READ = new Set(['edition', 'was']);

/** What was typed, without ids: those say nothing to a reader. Nested values are named by their path. */
export function typedFacts(body: unknown, path: readonly string[] = []): Fact[] {
  if (body === null || body === undefined || body === '') return [];
  if (typeof body === 'object') {
    const typed = Object.entries(body).filter(([key]) => path.length > 0 || !READ.has(key));
    return typed.flatMap(([key, value]) =>
      typedFacts(value, [...path, Array.isArray(body) ? String(Number(key) + 1) : spelled(key)]),
    );
  }
  const text = String(body);
  return UUID.test(text) ? [] : [{ term: path.join(' '), value: text }];
}
