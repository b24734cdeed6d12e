import type { Programme, ProgrammeAnswer, SolveProgramme } from '@rootclock/domain';
import loadHighs from 'highs';

/** Far beyond what any plan needs; whoever waits for longer is told that nothing better could be proved. */
const MOST_SECONDS = 8;

/** Terms of one line; the format of the file allows lines of some hundred characters, so they are broken. */
const sumOf = (terms: readonly (readonly [number, string])[]): string => terms.map(([amount, name]) => `+ ${amount} ${name}`).join('\n  ');

/** The programme as text in the CPLEX LP format: each choice is taken or not. */
export function textOf({ groups, limits, least }: Programme): string {
  const choices = groups.flat();
  const byLimit = limits.map((_, limit) => choices.flatMap(({ name, takes }) => takes.filter((take) => take.limit === limit).map(({ amount }) => [amount, name] as const)));
  const rows = [
    ...groups.map((group, at) => ` g${at}: ${sumOf(group.map(({ name }) => [1, name]))} <= 1`),
    ...byLimit.flatMap((terms, limit) => (terms.length === 0 ? [] : [` l${limit}: ${sumOf(terms)} <= ${limits[limit]}`])),
    // All numbers are whole, so half a unit below is the same bound and leaves room for rounding.
    ...(least === null ? [] : [` least: ${sumOf([...least.worthOf].map(([name, worth]) => [worth, name]))} >= ${least.amount - 0.5}`]),
  ];
  return [`Maximize\n obj: ${sumOf(choices.map(({ name, worth }) => [worth, name]))}`, `Subject To\n${rows.join('\n')}`, `Binary\n ${choices.map(({ name }) => name).join('\n ')}`, 'End\n'].join('\n');
}

/** Loads the solver, once a thread: some tens of milliseconds. */
export async function createSolver(): Promise<SolveProgramme> {
  const highs = await loadHighs();
  return async (programme): Promise<ProgrammeAnswer> => {
    if (programme.groups.every((group) => group.length === 0)) return { chosen: [], proven: true };
    const { Status, Columns } = highs.solve(textOf(programme), { mip_rel_gap: 0, mip_abs_gap: 0.5, time_limit: MOST_SECONDS, random_seed: 1 });
    const proven = Status === 'Optimal';
    if (!proven && Status !== 'Time limit reached') throw new Error(`the solver ended with ${Status}`);
    return { proven, chosen: Object.values(Columns).filter((column) => 'Primal' in column && column.Primal > 0.5).map(({ Name }) => Name) };
  };
}
