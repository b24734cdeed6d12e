import { requireDate } from '../../kernel/dates.ts';
import { InputError, MAX_UNITS, requireText, requireUnits, requireWhole } from '../../kernel/input.ts';
import type { AcceptedItem, AllocationDemand, AllocationInstance } from './instance.ts';
import { supplyServes } from './supply-serves.ts';

const MAX_RANK = 1_000_000_000;
const MAX_PENALTY = 1_000_000;
const MAX_UNIT_VALUE = 100_000_000;

/** Everything for which an instance makes no sense, each naming its value as in `supply[2].units`; none when it can be solved. */
export function findFaults({ today, horizonOn, supply, demand, current = [] }: AllocationInstance): InputError[] {
  const faults: InputError[] = [];
  const check = (claim: () => unknown) => {
    try {
      claim();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      faults.push(error);
    }
  };
  const lists = { supply, demand, current };
  for (const [name, list] of Object.entries(lists)) check(() => requireList<unknown>(name, list));
  if (faults.length > 0) return faults;

  check(() => requireDate('today', today));
  check(() => requireDate('horizonOn', horizonOn));
  const known = { supply: new Set<string>(), demand: new Set<string>() };
  for (const side of ['supply', 'demand'] as const) {
    for (const [at, { id }] of lists[side].entries()) check(() => requireNewId(`${side}[${at}].id`, id, known[side]));
  }
  for (const [at, row] of supply.entries()) {
    check(() => requireText(`supply[${at}].item`, row.item));
    check(() => requireWhole(`supply[${at}].units`, row.units, 0, MAX_UNITS));
    check(() => requireDate(`supply[${at}].readyOn`, row.readyOn));
    check(() => row.plantByOn === null || requireDate(`supply[${at}].plantByOn`, row.plantByOn));
    check(() => requireWhole(`supply[${at}].unitValue`, row.unitValue, 0, MAX_UNIT_VALUE));
  }
  for (const [at, row] of demand.entries()) for (const claim of demandClaims(`demand[${at}]`, row)) check(claim);
  for (const [at, row] of current.entries()) {
    check(() => requireKnown(`current[${at}].supply`, row.supply, known.supply));
    check(() => requireKnown(`current[${at}].demand`, row.demand, known.demand));
    check(() => requireUnits(`current[${at}].units`, row.units));
  }
  return faults.length > 0 ? faults : findPinFaults({ today, horizonOn, supply, demand, current });
}

/** What has to be true of a demand, whose values are named after `name`; each claim throws InputError where it is not. */
export function demandClaims(
  name: string,
  { rank, on, units, refuses = [], accepts }: AllocationDemand,
): (() => unknown)[] {
  return [
    () => requireWhole(`${name}.rank`, rank, 0, MAX_RANK),
    () => requireDate(`${name}.on`, on),
    () => requireUnits(`${name}.units`, units),
    () => requireList(`${name}.refuses`, refuses).forEach((id) => requireText(`${name}.refuses`, id)),
    () => requireList(`${name}.accepts`, accepts),
    ...(Array.isArray(accepts) ? accepts : []).flatMap(({ item, penalty }: AcceptedItem) => [
      () => requireText(`${name}.accepts.item`, item),
      () => requireWhole(`${name}.accepts.penalty`, penalty, 0, MAX_PENALTY),
    ]),
  ];
}

/** Returns the instance when it can be solved. Throws InputError naming the first value that makes no sense otherwise. */
export function requireInstance(instance: AllocationInstance): Required<AllocationInstance> {
  const [fault] = findFaults(instance);
  if (fault) throw fault;
  return { ...instance, current: instance.current ?? [] };
}

/** Pinned units stay whatever else happens, so they have to exist, to be wanted and to serve. */
function findPinFaults({ supply, demand, current = [] }: AllocationInstance): InputError[] {
  const supplies = new Map(supply.map((row) => [row.id, { row, left: row.units }]));
  const demands = new Map(demand.map((row) => [row.id, { row, left: row.units }]));
  return current.flatMap((pin, at) => {
    const [from, to] = [supplies.get(pin.supply), demands.get(pin.demand)];
    if (pin.pinned !== true || !from || !to) return [];
    from.left -= pin.units;
    to.left -= pin.units;
    const serving = supplyServes(from.row, to.row);
    return [
      ...(from.left < 0
        ? [
            new InputError(`current[${at}].units`, 'must not pin more than the supply holds', {
              supply: pin.supply,
              units: from.row.units,
            }),
          ]
        : []),
      ...(to.left < 0
        ? [
            new InputError(`current[${at}].units`, 'must not pin more than the demand wants', {
              demand: pin.demand,
              units: to.row.units,
            }),
          ]
        : []),
      ...(serving.serves
        ? []
        : [
            new InputError(
              `current[${at}].supply`,
              `must be able to serve the demand that it is pinned to; it is ${serving.reason}`,
              { supply: pin.supply, demand: pin.demand },
            ),
          ]),
    ];
  });
}

function requireList<T>(argument: string, value: readonly T[]): readonly T[] {
  if (!Array.isArray(value)) throw new InputError(argument, 'must be a list');
  return value;
}

function requireNewId(argument: string, id: string, known: Set<string>): void {
  requireText(argument, id);
  if (known.has(id)) throw new InputError(argument, 'must not occur twice', { id });
  known.add(id);
}

function requireKnown(argument: string, id: string, known: ReadonlySet<string>): void {
  if (!known.has(id)) throw new InputError(argument, 'must name a row of the same instance', { id });
}
