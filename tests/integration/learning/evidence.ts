import { randomUUID } from 'node:crypto';
import { propagation } from '@rootclock/contracts';
import { EVERYONE, type PropagationMethod } from '@rootclock/domain';
import { loadEvidence } from '../../../apps/server/src/features/propagation/learning/evidence.ts';
import { query, type ReadContext } from '../../../apps/server/src/trpc/operation.ts';
import type { TestNursery } from '../../support/nursery.ts';

/** Runs a read of the server's own within a transaction that is set to the nursery, as a screen's query does. */
export function readIn<Answer>(nursery: TestNursery, read: (context: ReadContext) => Promise<Answer>): Promise<Answer> {
  return nursery.runner.read(
    query({ name: 'testRead', input: propagation.listBatches, roles: EVERYONE, read }),
    nursery.people.grower,
    propagation.listBatches.parse({}),
  );
}

/** What the ledger shows of a plant, one line a stage: 'seed/emergence' or 'seed/emergence/scarified'. */
export async function evidenceOf(
  nursery: TestNursery,
  plantId: string,
): Promise<Record<string, { tried: number; passed: number; batches: number }>> {
  const rows = await readIn(nursery, (context) => loadEvidence(context, [plantId]));
  return Object.fromEntries(
    rows.map(({ method, stage, label, tried, passed, batches }) => [
      [method, stage, label].filter(Boolean).join('/'),
      { tried, passed, batches },
    ]),
  );
}

/** A protocol with its first version, written as the owner; the stages carry a share of 0.8 and 10, 20 and 30 days each. */
export async function addProtocol(
  { nurseryId, sql }: TestNursery,
  {
    plantId,
    method = 'seed',
    label = '',
    unit = 'cell',
    kinds = ['emergence', 'pricking-out', 'growing-on'],
    share = 0.8,
  }: { plantId: string; method?: PropagationMethod; label?: string; unit?: string; kinds?: string[]; share?: number },
): Promise<string> {
  const protocolId = randomUUID();
  const versionId = randomUUID();
  await sql('INSERT INTO protocol (nursery_id, id, plant_id, method, label) VALUES ($1, $2, $3, $4, $5)', [
    nurseryId,
    protocolId,
    plantId,
    method,
    label,
  ]);
  await sql(
    `INSERT INTO protocol_version (nursery_id, id, protocol_id, number, made_on, start_unit, standing) VALUES ($1, $2, $3, 1, '2026-01-01', $4, 'assumed')`,
    [nurseryId, versionId, protocolId, unit],
  );
  await sql(
    `INSERT INTO protocol_stage (nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, share, share_standing)
    SELECT $1, $2, k.position - 1, k.kind, 10, 20, 30, 'assumed', $4, 'assumed' FROM unnest($3::text[]) WITH ORDINALITY AS k (kind, position)`,
    [nurseryId, versionId, kinds, share],
  );
  await sql('UPDATE protocol SET current_version_id = $3 WHERE nursery_id = $1 AND id = $2', [
    nurseryId,
    protocolId,
    versionId,
  ]);
  return versionId;
}
