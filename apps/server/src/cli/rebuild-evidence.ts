// `rootclock rebuild-evidence`: writes down anew what the entries of every batch tell, for a database that something else wrote to.
import pg from 'pg';
import { readConfig } from '../config.ts';
import { migrate } from '../db/migrate.ts';
import { withNursery } from './nursery-database.ts';

export function rebuildEvidence(): Promise<number> {
  return withNursery(readConfig(process.env), { purpose: 'rebuild-evidence' }, async ({ ownerUrl }) => {
    await migrate(ownerUrl);
    const owner = new pg.Client({ connectionString: ownerUrl });
    await owner.connect();
    try {
      const { rows: nurseries } = await owner.query<{ id: string }>('SELECT id::text FROM nursery ORDER BY id');
      let changed = 0;
      for (const { id } of nurseries) {
        await owner.query('BEGIN');
        // Under the nursery's lock, since a command that is just being written would be told without its entry.
        await owner.query('SELECT 1 FROM nursery WHERE id = $1 FOR UPDATE', [id]);
        const { rows } = await owner.query<{ changed: number }>(
          'SELECT keep_batch_evidence($1, ARRAY(SELECT id FROM batch WHERE nursery_id = $1)) AS changed',
          [id],
        );
        await owner.query('COMMIT');
        changed += rows[0]?.changed ?? 0;
      }
      console.log(`What batches tell was worked out anew; ${changed} told something else than was kept.`);
    } finally {
      await owner.end();
    }
    return 0;
  });
}
