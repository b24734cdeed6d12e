// The stages of a batch as the model knows them: of one protocol, by its own and simplest reading of what entries say.
import type { Ledger } from './ledger.ts';

/** The protocol of the model's batches: its positions are those of this list. */
export const MODEL_STAGES = [
  { kind: 'stratification', days: 30 },
  { kind: 'sowing', days: 0 },
  { kind: 'emergence', days: 14 },
  { kind: 'growing-on', days: 60 },
] as const;
const SOWING = 1;
const EMERGENCE = 2;
const GROWING_ON = 3;

/** What an entry says of a batch's stages. */
export interface StageWord {
  batchId: string;
  what: 'started' | 'said' | 'alive';
  position: number | null;
  on: string;
}

interface BegunStage {
  position: number;
  on: string;
  /** Whether somebody said so, or the batch started in it; otherwise it only follows from a count or from sowing. */
  isSaid: boolean;
}

export function stageOf(ledger: Ledger, batchId: string): { begun: BegunStage[]; current: BegunStage | null } {
  const words = ledger.entries
    .flatMap((entry) => (entry.isReversed ? [] : (entry.stages ?? [])))
    .filter((word) => word.batchId === batchId);
  if (!words.some(({ what }) => what === 'started')) return { begun: [], current: null };
  const begun = new Map<number, BegunStage>();
  // The last word on a stage is written last and stays.
  for (const { what, position, on } of words)
    if (what !== 'alive' && position !== null && (what === 'said' || !begun.has(position)))
      begun.set(position, { position, on, isSaid: true });
  const follow = (position: number, on: string | undefined) => {
    if (on === undefined || begun.has(position)) return;
    const others = [...begun.values()];
    const fits = others.every((other) => (other.position < position ? other.on <= on : other.on >= on));
    if (fits && others.some((other) => other.position < position)) begun.set(position, { position, on, isSaid: false });
  };
  follow(
    GROWING_ON,
    words
      .filter(({ what }) => what === 'alive')
      .map(({ on }) => on)
      .sort()[0],
  );
  follow(EMERGENCE, begun.get(SOWING)?.on);
  const inOrder = [...begun.values()].sort((a, b) => a.position - b.position);
  return { begun: inOrder, current: inOrder.at(-1) ?? null };
}
