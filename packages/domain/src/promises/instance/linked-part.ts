import type { AcceptedItem, AllocationInstance } from './instance.ts';

/** The part of an instance that can matter to whoever accepts some items: their supplies, the lines that accept them, those lines' other items, and so on. */
export function linkedPart(instance: AllocationInstance, accepts: readonly AcceptedItem[]): AllocationInstance {
  const { supply, demand, current = [] } = instance;
  const linesOf = new Map<string, AllocationInstance['demand'][number][]>();
  for (const line of demand) {
    for (const item of new Set(line.accepts.map((accepted) => accepted.item))) {
      const lines = linesOf.get(item);
      if (lines) lines.push(line);
      else linesOf.set(item, [line]);
    }
  }
  const items = new Set(accepts.map(({ item }) => item));
  // A set is walked in the order of adding, so what is added on the way is looked at as well.
  for (const item of items)
    for (const line of linesOf.get(item) ?? []) for (const accepted of line.accepts) items.add(accepted.item);
  const lines = new Set([...items].flatMap((item) => linesOf.get(item) ?? []));
  const supplies = supply.filter(({ item }) => items.has(item));
  const [from, to] = [supplies, [...lines]].map((rows) => new Set(rows.map(({ id }) => id)));
  return {
    ...instance,
    supply: supplies,
    demand: demand.filter((line) => lines.has(line)),
    current: current.filter((row) => from?.has(row.supply) && to?.has(row.demand)),
  };
}
