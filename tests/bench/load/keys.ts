// Keys, indexes and the ledger's triggers, taken away for a load and put back after it. Each key is proved over all rows when it comes back.
import type pg from 'pg';

const LARGE = [
  'entry',
  'command',
  'movement',
  'account',
  'lot',
  'lineage',
  'entry_subject',
  'observation',
  'order_line',
  'garden_order',
  'intake',
  'batch',
  'batch_count',
  'treatment',
];
/** What the load does itself: balances and lineage from the movements. `rootclock check` proves it afterwards. */
const TRIGGERS = [
  ['movement', 'movement_apply'],
  ['entry', 'entry_reversal_is_final'],
] as const;

interface Definition {
  owner: string;
  name: string;
  definition: string;
}

const large = `SELECT t::regclass::oid FROM unnest($1::text[]) t`;

async function constraintsOf(client: pg.Client, kinds: string): Promise<Definition[]> {
  const { rows } = await client.query<Definition>(
    `SELECT conrelid::regclass::text AS owner, quote_ident(conname) AS name, pg_get_constraintdef(oid) AS definition FROM pg_constraint
      WHERE contype = ANY (string_to_array($2, NULL)) AND (conrelid IN (${large}) OR confrelid IN (${large})) ORDER BY conname`,
    [LARGE, kinds],
  );
  return rows;
}

async function indexesOf(client: pg.Client): Promise<Definition[]> {
  const { rows } = await client.query<Definition>(
    `SELECT i.indrelid::regclass::text AS owner, i.indexrelid::regclass::text AS name, pg_get_indexdef(i.indexrelid) AS definition FROM pg_index i
      WHERE i.indrelid IN (${large}) AND NOT EXISTS (SELECT 1 FROM pg_constraint c WHERE c.conindid = i.indexrelid) ORDER BY 2`,
    [LARGE],
  );
  return rows;
}

/** Takes them away; what it answers puts them back. Only the owner may, and only on a database that nobody else uses. */
export async function liftKeys(client: pg.Client): Promise<() => Promise<void>> {
  const references = await constraintsOf(client, 'f');
  const keys = await constraintsOf(client, 'pu');
  // Keys that others refer to go after those who refer to them, and come back before.
  for (const { owner, name } of references) await client.query(`ALTER TABLE ${owner} DROP CONSTRAINT ${name}`);
  for (const { owner, name } of keys) await client.query(`ALTER TABLE ${owner} DROP CONSTRAINT ${name}`);
  const indexes = await indexesOf(client);
  for (const { name } of indexes) await client.query(`DROP INDEX ${name}`);
  for (const [table, trigger] of TRIGGERS) await client.query(`ALTER TABLE ${table} DISABLE TRIGGER ${trigger}`);
  return async () => {
    await client.query(`SET maintenance_work_mem = '256MB'`);
    for (const { owner, name, definition } of keys)
      await client.query(`ALTER TABLE ${owner} ADD CONSTRAINT ${name} ${definition}`);
    for (const { definition } of indexes) await client.query(definition);
    for (const { owner, name, definition } of references)
      await client.query(`ALTER TABLE ${owner} ADD CONSTRAINT ${name} ${definition}`);
    for (const [table, trigger] of TRIGGERS) await client.query(`ALTER TABLE ${table} ENABLE TRIGGER ${trigger}`);
  };
}
