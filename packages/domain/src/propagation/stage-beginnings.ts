import type { CalendarDate } from '../kernel/dates.ts';
import type { StageBeginning } from './batch-stages.ts';
import { isInSeason } from './protocol/season.ts';
import { type ProtocolPlan, STAGE_KINDS, type StageKind, type StagePlan } from './protocol/stages.ts';

/** What an entry of a batch says of its stages. */
export interface StageEvidence {
  version: number;
  /** Whether the batch began with it, by a start of its own or drawn from packs. */
  starts: boolean;
  kind: string;
  happenedOn: CalendarDate;
  /** The position of the stage that somebody said began; of a start, the stage it started in. */
  stagePosition: number | null;
  /** Plants alive, where the entry is a count of them. */
  emergedUnits: number | null;
  /** Plants that were potted by it. */
  pottedPlants: number;
}

/** Why a stage is taken to have begun: the batch started in it, somebody said so, or a count, a potting or the act before it implies it. */
export type BeginningBasis = 'start' | 'said' | 'count' | 'potting' | 'act';
export interface KnownBeginning extends StageBeginning {
  basis: BeginningBasis;
}

/** Things done in a moment: where the protocol gives them no time at all, the next stage begins with them. */
const ACTS: readonly StageKind[] = ['scarification', 'sowing', 'sticking', 'pricking-out'];
const isAct = (stage: StagePlan) => ACTS.includes(stage.kind) && stage.longDays === 0;

const rank = (kind: StageKind) => STAGE_KINDS.indexOf(kind);
const after = (plan: ProtocolPlan, kind: StageKind) => plan.stages.findIndex((stage) => rank(stage.kind) > rank(kind));

/** Stages that go on by themselves. Whether plants are ready is found by looking, and never follows from a count or from potting. */
const GROWS: readonly StageKind[] = ['pricking-out', 'growing-on', 'hardening'];
const ifGrowing = (plan: ProtocolPlan, position: number): number => {
  const stage = plan.stages[position];
  return stage && GROWS.includes(stage.kind) && !isAct(stage) ? position : -1;
};

/** The stage that the first count above zero begins, or -1: what follows emergence or rooting, unless that is an act somebody has yet to do. */
function begunByCount(plan: ProtocolPlan): number {
  return plan.stages.some(({ kind }) => kind === 'emergence' || kind === 'rooting')
    ? ifGrowing(plan, after(plan, 'rooting'))
    : -1;
}

/** Adds a beginning unless the stage has one already, or it would stand before an earlier stage or after a later one. */
function add(known: KnownBeginning[], beginning: KnownBeginning): void {
  const fits = known.every(({ position, on }) =>
    position < beginning.position ? on <= beginning.on : position > beginning.position && on >= beginning.on,
  );
  if (fits) known.push(beginning);
}

/**
 * Which stages of its protocol a batch has begun, and when, as its entries imply, in the order of the stages:
 * - the start begins the stage it names, or the first;
 * - somebody who says that a stage began governs over all that is only implied, the last word over earlier ones;
 * - the first count above zero ends the wait for emergence or rooting and begins the stage after it; where that is pricking out that takes no time
 *   (an act), it is not done by coming up, and the wait goes on until it is;
 * - the first potting begins what comes after pricking out, though some of the batch may stay behind;
 * - neither counts nor potting begin the root check or say that plants are ready;
 * - scarification, sowing, sticking and pricking out for which the protocol gives no time begin the next stage as well, if its season allows.
 * Nothing implied begins a stage that came before one already begun. All of it follows from entries that stand, so a reversal needs no undoing.
 */
export function stageBeginnings(plan: ProtocolPlan, entries: readonly StageEvidence[]): KnownBeginning[] {
  const last = plan.stages.length - 1;
  const written = [...entries].sort((a, b) => a.version - b.version);
  const start = written.find(({ starts }) => starts);
  const startedIn = Math.min(start?.stagePosition ?? 0, last);
  const said = new Map<number, CalendarDate>();
  for (const entry of written)
    if (entry !== start && entry.stagePosition !== null && entry.stagePosition <= last)
      said.set(entry.stagePosition, entry.happenedOn);
  const known: KnownBeginning[] = [...said].map(([position, on]) => ({ position, on, basis: 'said' }));
  if (start && !said.has(startedIn)) known.push({ position: startedIn, on: start.happenedOn, basis: 'start' });

  const earliest = (days: readonly CalendarDate[]) => [...days].sort()[0];
  const aliveOn = earliest(
    written.filter(({ emergedUnits }) => (emergedUnits ?? 0) > 0).map(({ happenedOn }) => happenedOn),
  );
  const pottedOn = earliest(
    written.filter(({ kind, pottedPlants }) => kind === 'pot' && pottedPlants > 0).map(({ happenedOn }) => happenedOn),
  );
  const byCount = begunByCount(plan);
  const byPotting = ifGrowing(plan, after(plan, 'pricking-out'));
  const first = Math.min(...known.map(({ position }) => position));
  if (aliveOn !== undefined && byCount > first) add(known, { position: byCount, on: aliveOn, basis: 'count' });
  if (pottedOn !== undefined && byPotting > first) add(known, { position: byPotting, on: pottedOn, basis: 'potting' });
  for (const [position, stage] of plan.stages.entries()) {
    const done = known.find((beginning) => beginning.position === position);
    const next = plan.stages[position + 1];
    if (done && next && isAct(stage) && (next.season === null || isInSeason(next.season, done.on)))
      add(known, { position: position + 1, on: done.on, basis: 'act' });
  }
  return known.sort((a, b) => a.position - b.position);
}
