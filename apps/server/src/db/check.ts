import { DATA_LAWS, type DataLaw } from '@rootclock/domain';
import pg from 'pg';
import { commandProofs } from './check/command-proofs.ts';
import { evidenceProofs } from './check/evidence-proofs.ts';
import { fileProofs, proveStore, type StoreReport, type StoreToProve } from './check/file-proofs.ts';
import { ledgerProofs, type Proofs } from './check/ledger-proofs.ts';
import { promiseProofs } from './check/promise-proofs.ts';
import { seedProofs } from './check/seed-proofs.ts';

export interface Breach {
  law: DataLaw;
  nursery: string | null;
  what: string;
}

export interface LawReport {
  breaches: Breach[];
  /** How much was looked at, so that a clean report over nothing is not taken for a proof. */
  looked: { nurseries: number; lots: number; entries: number; movements: number };
  laws: DataLaw[];
  /** Of the store of files, where it was looked at too. */
  store?: Pick<StoreReport, 'looked' | 'orphans'>;
}

const PROOFS: Proofs = {
  ...ledgerProofs,
  ...promiseProofs,
  ...seedProofs,
  ...evidenceProofs,
  ...commandProofs,
  ...fileProofs,
};
/** Enough to see what is wrong; a law that breaks everywhere would fill the screen. */
const MOST_A_LAW = 20;

/**
 * Proves every law over the whole database, in one snapshot, as the owner: row security would hide other nurseries. With the store of files it
 * also holds that against the rows.
 */
export async function checkLaws(ownerUrl: string, toProve?: StoreToProve): Promise<LawReport> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    await client.query(`SET LOCAL work_mem = '64MB'`);
    const breaches: Breach[] = [];
    const laws = Object.keys(DATA_LAWS) as DataLaw[];
    for (const law of laws) {
      const proof = PROOFS[law];
      if (!proof) throw new Error(`the law ${law} has no proof`);
      // Worked out whole before it is cut: a plan that hopes for early breaches walks a lawful ledger row by row, ten times as long.
      const { rows } = await client.query<{ nursery: string | null; what: string }>(
        `WITH proof AS MATERIALIZED (${proof}) SELECT nursery::text, what FROM proof LIMIT ${MOST_A_LAW}`,
      );
      breaches.push(...rows.map(({ nursery, what }) => ({ law, nursery, what })));
    }
    const {
      rows: [looked],
    } = await client.query<LawReport['looked']>(`
      SELECT (SELECT count(*)::int FROM nursery) AS nurseries, (SELECT count(*)::int FROM lot) AS lots,
             (SELECT count(*)::int FROM entry) AS entries, (SELECT count(*)::int FROM movement) AS movements`);
    await client.query('COMMIT');
    const report = { breaches, looked: looked ?? { nurseries: 0, lots: 0, entries: 0, movements: 0 }, laws };
    if (!toProve) return report;
    const { breaches: ofStore, ...store } = await proveStore(client, toProve);
    const lost = ofStore.slice(0, MOST_A_LAW).map((each) => ({ law: 'files-are-kept' as const, ...each }));
    return { ...report, breaches: [...breaches, ...lost], store };
  } finally {
    await client.end();
  }
}
