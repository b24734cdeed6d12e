import type { Story } from './story.ts';

export interface Replayed {
  entries: number;
  /** Accounts that would have held less than nothing after an entry. */
  negative: { version: number; account: string; units: number }[];
  /** Accounts whose stored balance is not what their movements make. */
  different: { account: string; stored: number; replayed: number }[];
}

/** Reckons every balance anew from the movements, in the order in which they were recorded. */
export async function replay({ sql, nurseryId }: Pick<Story, 'sql' | 'nurseryId'>): Promise<Replayed> {
  const movements = await sql<{ version: number; from: string; to: string; fromUnits: number; toUnits: number }>(
    `
    SELECT e.version::int, m.from_account_id::text AS "from", m.to_account_id::text AS "to", m.from_units AS "fromUnits", m.to_units AS "toUnits"
      FROM movement m JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id WHERE m.nursery_id = $1 ORDER BY e.version, m.line`,
    [nurseryId],
  );
  const accounts = await sql<{ id: string; kind: string; units: number }>(
    'SELECT id::text, kind, units FROM account WHERE nursery_id = $1',
    [nurseryId],
  );
  const inside = new Set(accounts.filter(({ kind }) => kind !== 'outside').map(({ id }) => id));
  const units = new Map<string, number>();
  const negative: Replayed['negative'] = [];
  const versions = [...new Set(movements.map(({ version }) => version))];
  for (const version of versions) {
    const touched = new Set<string>();
    for (const { from, to, fromUnits, toUnits } of movements.filter((movement) => movement.version === version)) {
      units.set(from, (units.get(from) ?? 0) - fromUnits);
      units.set(to, (units.get(to) ?? 0) + toUnits);
      touched.add(from).add(to);
    }
    for (const account of touched) {
      const now = units.get(account) ?? 0;
      if (inside.has(account) && now < 0) negative.push({ version, account, units: now });
    }
  }
  return {
    entries: versions.length,
    negative,
    different: accounts
      .filter(({ id }) => inside.has(id))
      .map(({ id, units: stored }) => ({ account: id, stored, replayed: units.get(id) ?? 0 }))
      .filter(({ stored, replayed }) => stored !== replayed),
  };
}
