import type { Programme, ProgrammeAnswer, ProgrammeChoice, SolveProgramme } from '@rootclock/domain';
import type { Highs } from 'highs';
import { FreshHighs } from './fresh-highs.ts';
import { programmeText } from './programme-text.ts';

/** Up to so many groups the best answer is looked for and proved. */
const PROVED_UP_TO = 40;
/** Of a larger programme so many groups are decided by branching; what is clear without stays as it is. */
const CORE_GROUPS = 60;
/** And there the search ends when nothing can be better by more than this share. */
const CLOSE_ENOUGH = 0.005;
/** Beyond what any plan needs; where it runs out, what was found until then is the answer. */
const MOST_SECONDS = 8;
const HAIR = 1e-6;

type Group = Programme['groups'][number];

/** What a linear programme says of a group: taken whole or not, or torn between choices, and how clearly. */
interface Marked {
  group: Group;
  at: number;
  taken: ProgrammeChoice | null;
  clearness: number;
}

const worthOf = (choices: readonly ProgrammeChoice[]) => choices.reduce((sum, { worth }) => sum + worth, 0);

/** With parts of choices allowed: the most that any answer can be worth, and what is already clear. */
function relax(highs: Highs, programme: Programme): { most: number; marked: Marked[] } {
  const { Columns, Rows, ObjectiveValue } = highs.solve(programmeText(programme, false), {});
  const columnOf = ({ name }: ProgrammeChoice) => {
    const column = Columns[name];
    return {
      part: column && 'Primal' in column ? column.Primal : 0,
      dual: column && 'Dual' in column ? Math.abs(column.Dual) : 0,
    };
  };
  const marked = programme.groups.map((group, at): Marked => {
    const taken = group.find((choice) => columnOf(choice).part > 1 - HAIR) ?? null;
    if (taken) {
      // Rows come back in the order in which they were written, those of the groups first.
      const row = Rows[at];
      return {
        group,
        at,
        taken,
        clearness: row && 'Dual' in row && typeof row.Dual === 'number' ? Math.abs(row.Dual) : 0,
      };
    }
    const isTorn = group.some((choice) => columnOf(choice).part > HAIR);
    return { group, at, taken, clearness: isTorn ? 0 : Math.min(...group.map((choice) => columnOf(choice).dual)) };
  });
  return { most: ObjectiveValue, marked };
}

function branch(highs: Highs, programme: Programme, gap: number): { chosen: ProgrammeChoice[]; ended: boolean } {
  const choices = programme.groups.flat();
  if (choices.length === 0) return { chosen: [], ended: true };
  const { Columns, Status } = highs.solve(programmeText(programme, true), {
    mip_rel_gap: 0,
    mip_abs_gap: Math.max(0.5, gap),
    time_limit: MOST_SECONDS,
    random_seed: 1,
  });
  if (Status !== 'Optimal' && Status !== 'Time limit reached') throw new Error(`the solver ended with ${Status}`);
  const isTaken = ({ name }: ProgrammeChoice) => {
    const column = Columns[name];
    return column !== undefined && 'Primal' in column && column.Primal > 0.5;
  };
  return { chosen: choices.filter(isTaken), ended: Status === 'Optimal' };
}

/** What is left to decide when the clear choices are taken: the groups that are least clear, within what is left of the limits. */
function coreOf({ limits }: Programme, marked: readonly Marked[]): { taken: ProgrammeChoice[]; core: Programme } {
  const unclear = new Set(
    [...marked]
      .sort((a, b) => a.clearness - b.clearness || a.at - b.at)
      .slice(0, CORE_GROUPS)
      .map(({ at }) => at),
  );
  const taken = marked.flatMap((group) => (group.taken && !unclear.has(group.at) ? [group.taken] : []));
  const left = [...limits];
  for (const { takes } of taken) for (const { limit, amount } of takes) left[limit] = (left[limit] ?? 0) - amount;
  const fits = ({ takes }: ProgrammeChoice) => takes.every(({ limit, amount }) => amount <= (left[limit] ?? 0));
  const groups = marked
    .filter(({ at }) => unclear.has(at))
    .map(({ group }) => group.filter(fits))
    .filter((group) => group.length > 0);
  return { taken, core: { groups, limits: left } };
}

function solve(highs: Highs, programme: Programme): ProgrammeAnswer {
  const { most, marked } = relax(highs, programme);
  const isSmall = programme.groups.length <= PROVED_UP_TO;
  const { taken, core } = isSmall ? { taken: [], core: programme } : coreOf(programme, marked);
  const branched = branch(highs, core, isSmall ? 0 : CLOSE_ENOUGH * most);
  const chosen = [...taken, ...branched.chosen];
  // All worths are whole numbers, so that less than one above is none above.
  const above = Math.floor(most + HAIR) - worthOf(chosen);
  return {
    chosen: chosen.map(({ name }) => name),
    within: (isSmall && branched.ended) || above <= 0 ? 0 : above / most,
  };
}

/** Loads the solver, once a thread and again after a failure: some tens of milliseconds. */
export async function createSolver(fresh = new FreshHighs()): Promise<SolveProgramme> {
  await fresh.use(() => {});
  return async (programme) =>
    programme.groups.some((group) => group.length > 0)
      ? fresh.use((highs) => solve(highs, programme))
      : { chosen: [], within: 0 };
}
