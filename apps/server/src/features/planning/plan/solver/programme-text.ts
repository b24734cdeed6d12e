import type { Programme } from '@rootclock/domain';

/** Terms of a line; the format allows lines of some hundred characters, so they are broken. */
const sumOf = (terms: readonly (readonly [number, string])[]): string =>
  terms.map(([amount, name]) => `+ ${amount} ${name}`).join('\n  ');

/** The programme as text in the CPLEX LP format. `whole` says that a choice is taken or not; without it parts of choices may be taken. */
export function programmeText({ groups, limits }: Programme, whole: boolean): string {
  const choices = groups.flat();
  const byLimit = limits.map((_, limit) =>
    choices.flatMap(({ name, takes }) =>
      takes.filter((take) => take.limit === limit).map(({ amount }) => [amount, name] as const),
    ),
  );
  const rows = [
    ...groups.map((group, at) => ` g${at}: ${sumOf(group.map(({ name }) => [1, name]))} <= 1`),
    ...byLimit.flatMap((terms, limit) =>
      terms.length === 0 ? [] : [` l${limit}: ${sumOf(terms)} <= ${limits[limit]}`],
    ),
  ];
  const kind = whole ? [`Binary\n ${choices.map(({ name }) => name).join('\n ')}`] : [];
  return [
    `Maximize\n obj: ${sumOf(choices.map(({ name, worth }) => [worth, name]))}`,
    `Subject To\n${rows.join('\n')}`,
    ...kind,
    'End\n',
  ].join('\n');
}
