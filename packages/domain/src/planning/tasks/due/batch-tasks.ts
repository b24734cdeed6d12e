import { addDays, type CalendarDate, latestOf } from '../../../kernel/dates.ts';
import { addSpan } from '../../../kernel/spans.ts';
import { type StageProgress, stageProgress } from '../../../propagation/batch-stages.ts';
import type { TaskBatch, TaskDetails } from '../facts.ts';
import type { TaskEnding, TaskKind } from '../kinds.ts';
import { openTask, type Task } from '../task.ts';

/** How often a batch that is coming up or rooting is counted: this nursery's own habit, a week, since a course with wider gaps shows little. */
export const COUNT_EVERY_DAYS = 7;

/**
 * What is to be done with a batch: what its protocol asks for from the stage it is in to the end, the next count while it comes up or roots, and a
 * look at it where it stays in a stage longer than nine of ten batches do.
 */
export function batchTasks(batch: TaskBatch, today: CalendarDate): Task[] {
  if (batch.stage === null) return [];
  const plan = { stages: batch.stages, dormantMonths: batch.dormantMonths };
  const { position, begunOn } = batch.stage;
  const [current, ...coming] = stageProgress(
    plan,
    batch.startedOn,
    [{ position, on: begunOn }],
    today,
    batch.secondWinterOn,
  ).slice(position);
  if (!current) return [];
  return [...lateness(batch, current), ...counting(batch, current, begunOn), ...turns(batch, [current, ...coming])];
}

interface Said {
  turn: string;
  dueOn: CalendarDate;
  lateOn?: CalendarDate;
  endsBy: TaskEnding;
  earliestOn: CalendarDate;
  details?: TaskDetails;
}

const about = (
  batch: TaskBatch,
  kind: TaskKind,
  { turn, dueOn, endsBy, earliestOn, lateOn, details = {} }: Said,
): Task =>
  openTask(
    { kind, subject: { kind: 'batch', id: batch.id, code: batch.code }, turn, dueOn, endsBy, earliestOn },
    {
      lateOn: lateOn ?? null,
      plantName: batch.plantName,
      placeIds: batch.placeIds,
      units: batch.units,
      unit: batch.unit,
      details,
    },
  );

function lateness(batch: TaskBatch, current: StageProgress): Task[] {
  if (current.state !== 'late') return [];
  const dueOn = addDays(current.lateOn, 1);
  // A second winter moves the long end by a year, and with it the question is a new one.
  return [
    about(batch, 'stage-late', {
      turn: `s${current.position}-${current.lateOn}`,
      dueOn,
      endsBy: 'tick',
      earliestOn: current.lateOn,
      details: { stage: current.kind, sinceOn: current.lateOn },
    }),
  ];
}

/** The next count alone: later ones follow from it. While a batch waits for its second winter nobody counts until its season comes round again. */
function counting(batch: TaskBatch, current: StageProgress, begunOn: CalendarDate): Task[] {
  if (current.kind !== 'emergence' && current.kind !== 'rooting') return [];
  const sinceOn = batch.lastCount === null ? begunOn : latestOf(begunOn, batch.lastCount.on);
  const dueOn = latestOf(addDays(sinceOn, COUNT_EVERY_DAYS), comesRoundOn(begunOn, batch.secondWinterOn));
  return [
    about(batch, 'count', {
      turn: sinceOn,
      dueOn,
      endsBy: 'entry',
      earliestOn: sinceOn,
      details: { stage: current.kind, sinceOn },
    }),
  ];
}

function comesRoundOn(begunOn: CalendarDate, keptOn: CalendarDate | null): CalendarDate {
  if (keptOn === null || keptOn < begunOn) return begunOn;
  let years = 1;
  while (addSpan(begunOn, `P${years}Y`) <= keptOn) years += 1;
  return addSpan(begunOn, `P${years}Y`);
}

/** The turns from stage to stage that ask for work. What comes after pricking out is done with the pots, so it is the lots' where there is that stage. */
function turns(batch: TaskBatch, progress: readonly StageProgress[]): Task[] {
  const isPricked = batch.stages.some(({ kind }) => kind === 'pricking-out');
  const tasks: Task[] = [];
  for (const [at, stage] of progress.entries()) {
    const next = progress[at + 1];
    const isCurrent = at === 0;
    if (stage.kind === 'pricking-out') {
      tasks.push(potting(batch, stage, isCurrent));
      return tasks;
    }
    const kind = next && kindOfTurn(stage, next);
    if (!next || !kind || (kind === 'harden' && isPricked)) continue;
    tasks.push(
      about(batch, kind, {
        turn: `s${next.position}`,
        dueOn: next.shouldBeginOn,
        ...(isCurrent ? { lateOn: latestOf(stage.lateOn, next.shouldBeginOn) } : {}),
        endsBy: 'stage',
        earliestOn: stage.begunOn ?? batch.startedOn,
        details: { stage: stage.kind, next: next.kind, nextPosition: next.position },
      }),
    );
  }
  return tasks;
}

/** Seed comes out of the cold and is sown in one go, so that is one task. */
function kindOfTurn(stage: StageProgress, next: StageProgress): TaskKind | null {
  if (stage.kind === 'stratification') return 'take-out-of-cold';
  if (next.kind === 'sowing') return 'sow';
  if (next.kind === 'sticking') return 'stick';
  return next.kind === 'hardening' ? 'harden' : null;
}

/** Due at the end of the stage, since potting begins the next one; the potting itself ends the task. */
function potting(batch: TaskBatch, stage: StageProgress, isCurrent: boolean): Task {
  const details: TaskDetails = { stage: 'pricking-out' };
  const dueOn = isCurrent ? stage.dueOn : latestOf(stage.dueOn, stage.shouldBeginOn);
  return about(batch, batch.method === 'seed' ? 'prick-out' : 'pot', {
    turn: `s${stage.position}`,
    dueOn,
    ...(isCurrent ? { lateOn: stage.lateOn } : {}),
    endsBy: 'entry',
    earliestOn: batch.startedOn,
    details,
  });
}
