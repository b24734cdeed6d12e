import { randomUUID } from 'node:crypto';
import type { StageKind } from '@rootclock/domain';
import type { TestNursery } from './nursery.ts';

export interface TestStage {
  kind: StageKind;
  /** Short, usual and long at once, or each. */
  days: number | readonly [number, number, number];
  share?: number;
  season?: readonly [string, string];
  rests?: boolean;
  containerId?: string;
}

/** A protocol with its first version, written as the owner; it answers the ids of both. */
export async function addProtocol(
  { nurseryId, sql }: Pick<TestNursery, 'nurseryId' | 'sql'>,
  {
    plantId,
    stages,
    method = 'seed',
    label = '',
    startUnit = 'cell',
    startContainerId = null,
    targetContainerId = null,
    seedsPerCell = 1,
  }: {
    plantId: string;
    stages: readonly TestStage[];
    method?: string;
    label?: string;
    startUnit?: string;
    startContainerId?: string | null;
    targetContainerId?: string | null;
    seedsPerCell?: number | null;
  },
): Promise<{ protocolId: string; versionId: string }> {
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
    `INSERT INTO protocol_version (nursery_id, id, protocol_id, number, made_on, seeds_per_cell, start_unit, start_container_id, target_container_id, standing)
    VALUES ($1, $2, $3, 1, '2026-01-01', $4, $5, $6, $7, 'assumed')`,
    [nurseryId, versionId, protocolId, seedsPerCell, startUnit, startContainerId, targetContainerId],
  );
  for (const [
    position,
    { kind, days, share = 1, season = null, rests = false, containerId = null },
  ] of stages.entries()) {
    const [short, usual, long] = typeof days === 'number' ? [days, days, days] : days;
    await sql(
      `INSERT INTO protocol_stage (nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, share, share_standing, season_from_md, season_to_md, rests, container_id)
      VALUES ($1, $2, $3, $4, $5, $6, $7, 'assumed', $8, 'assumed', $9, $10, $11, $12)`,
      [
        nurseryId,
        versionId,
        position,
        kind,
        short,
        usual,
        long,
        share,
        season?.[0] ?? null,
        season?.[1] ?? null,
        rests,
        containerId,
      ],
    );
  }
  await sql('UPDATE protocol SET current_version_id = $3 WHERE nursery_id = $1 AND id = $2', [
    nurseryId,
    protocolId,
    versionId,
  ]);
  return { protocolId, versionId };
}
