import type { PropagationMethod, ShareEvidence, StageKind } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { type CountedStage, readBatchStages } from './batch-stages-reads.ts';
import { readGrowing } from './growing-reads.ts';
import { loadVersion } from './store.ts';

/** What the ledger shows of one stage of one plant by one method, under a protocol of that name; without a protocol the name is empty. */
export interface StageEvidence extends ShareEvidence {
  plantId: string;
  method: PropagationMethod;
  label: string;
  stage: StageKind;
  /** Whether seeds were tried, sown into whole trays or packs; otherwise cells, pieces or plants. */
  ofSeeds: boolean;
  /** Plants counted beyond those that were tried (several of one cell, say), which are no passes. */
  over: number;
}

/**
 * Shares of cells and shares of seeds cannot be added up. Where a name has both, the ones its current protocol sows speak; without a protocol those of
 * more batches, and of cells where they are as many.
 */
function alike(rows: readonly CountedStage[]): CountedStage[] {
  const keyOf = ({ plantId, method, label, stage }: CountedStage) => [plantId, method, label, stage].join('/');
  const chosen = new Map<string, CountedStage>();
  const weight = (row: CountedStage) =>
    row.protocolSowsSeeds === null || row.stage === 'pricking-out'
      ? row.batches * 2 + (row.ofSeeds ? 0 : 1)
      : Number(row.ofSeeds === row.protocolSowsSeeds);
  for (const row of rows) {
    const other = chosen.get(keyOf(row));
    if (!other || weight(row) > weight(other)) chosen.set(keyOf(row), row);
  }
  return [...chosen.values()];
}

async function readEvidence(context: ReadContext, plantIds: readonly string[] | 'all'): Promise<StageEvidence[]> {
  const counted = alike(await readBatchStages(context, plantIds)).map(
    ({ protocolSowsSeeds: _protocol, ...row }) => row,
  );
  const grown = (await readGrowing(context, plantIds)).map((row) => ({
    ...row,
    stage: 'growing-on' as const,
    ofSeeds: false,
    over: 0,
  }));
  return [...counted, ...grown];
}

/** Of each nursery what its whole ledger showed last, until the next command or day: every plan asks for it, and it reads every movement. */
const lastRead = new Map<string, { version: number; today: string; evidence: StageEvidence[] }>();
const MOST_KEPT = 20;

/**
 * What passed each stage, from the ledger's entries that stand: coming up or rooting, pricking out, and growing on (with hardening and the root check).
 * How each is counted stands with the two reads it is made of.
 */
export async function loadEvidence(
  context: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<StageEvidence[]> {
  if (plantIds !== 'all') return plantIds.length === 0 ? [] : readEvidence(context, plantIds);
  const { nurseryId, today } = context;
  // The number is read before the ledger: what is committed between the two is read again with the next number.
  const version = await loadVersion(context);
  const known = lastRead.get(nurseryId);
  if (known?.version === version && known.today === today) return known.evidence;
  const evidence = await readEvidence(context, 'all');
  if (lastRead.size >= MOST_KEPT) lastRead.clear();
  lastRead.set(nurseryId, { version, today, evidence });
  return evidence;
}
