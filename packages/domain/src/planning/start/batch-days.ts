import type { CalendarDate } from '../../kernel/dates.ts';
import { type Schedule, STAGE_KINDS, type StageKind } from '../../propagation/protocol/stages.ts';

/** The days of a batch that decide where it stands and which clocks run. */
export interface BatchDays {
  /** From when trays stand on a bench; packs in the cold before take no room there. */
  sownOn: CalendarDate;
  /** When the first are up or rooted: what follows emergence or rooting begins. Null where nothing comes up. */
  aliveOn: CalendarDate | null;
  /** When they come into the container they are wanted in; null where they are in it from the start. */
  pottedOn: CalendarDate | null;
  readyOn: CalendarDate;
}

const rank = (kind: StageKind) => STAGE_KINDS.indexOf(kind);

/** The stage at which plants are potted: pricking out, or what grows on after it, or none. */
export const pottingStage = (kinds: readonly StageKind[]): StageKind | null =>
  kinds.find((kind) => rank(kind) >= rank('pricking-out')) ?? null;

/** Reads the days off a schedule. `stays` says that plants stay in the container they are started in. */
export function batchDays({ stages, readyOn }: Schedule, stays: boolean): BatchDays {
  const beginning = (from: StageKind) => stages.find(({ kind }) => rank(kind) >= rank(from))?.beginsOn ?? readyOn;
  const comesUp = stages.some(({ kind }) => kind === 'emergence' || kind === 'rooting');
  return {
    sownOn: beginning('sowing'),
    aliveOn: comesUp ? beginning('pricking-out') : null,
    pottedOn: stays ? null : beginning('pricking-out'),
    readyOn,
  };
}
