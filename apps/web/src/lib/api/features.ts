/**
 * Which reads an entry makes stale. A feature may read only those before it in this order, so a change to one is seen by it
 * and by all after it; people and files stand beside all.
 */
import type { QueryClient } from '@tanstack/react-query';

const ORDER = [
  'plants',
  'sources',
  'stock',
  'potLife',
  'propagation',
  'clients',
  'orders',
  'promises',
  'gardens',
  'sales',
  'planning',
  'records',
] as const;
const BESIDE = ['people', 'files'] as const;
type Beside = (typeof BESIDE)[number];
type Feature = (typeof ORDER)[number] | Beside;

const isBeside = (name: string): name is Beside => (BESIDE as readonly string[]).includes(name);

/** `pot-life` as the server's folders say it, `potLife` as procedures do. */
const asProcedure = (name: string): string => name.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

/** The features whose reads are stale after a change to the ones named; an unknown name makes all of them stale. */
export function staleAfter(touched: readonly string[]): Feature[] {
  const names = touched.map(asProcedure);
  const first = Math.min(
    ...names
      .filter((name) => !isBeside(name))
      .map((name) =>
        Math.max(
          0,
          ORDER.findIndex((feature) => feature === name),
        ),
      ),
  );
  const stale: Feature[] = Number.isFinite(first) ? ORDER.slice(first) : [];
  return [...stale, ...names.filter(isBeside)];
}

export function markStale(queryClient: QueryClient, touched: readonly string[]): void {
  for (const feature of staleAfter(touched)) void queryClient.invalidateQueries({ queryKey: [[feature]] });
}
