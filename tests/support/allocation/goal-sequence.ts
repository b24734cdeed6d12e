// The goals of an allocation one after the other as linear programmes, each with what was reached before it fixed by an equality.
import type { AllocationInstance } from '@rootclock/domain';
import type { Highs } from 'highs';
import { byPair, daysOfUnit, type Goals, isServing, pairKey, penaltyOfUnit, ranksOf, valueOfUnit } from './goals.ts';

/** The number of HiGHS's option. */
const PRIMAL = 4;

type Model = ReturnType<Highs['createModel']>;

/** Coefficients of some columns. */
interface Terms {
  indices: number[];
  values: number[];
}

interface Columns {
  /** By pair that serves: its goals, and what is pinned. */
  pairs: {
    supply: number;
    demand: number;
    rank: number;
    penalty: number;
    value: number;
    days: number;
    pinned: number;
  }[];
  /** Holdings of pairs that serve, each with a column for what it loses. */
  losing: { pair: number; column: number; units: number }[];
  /** What holdings of pairs that do not serve lose in any case. */
  lost: number;
}

function columnsOf(instance: AllocationInstance): Columns {
  const { supply, demand, current = [] } = instance;
  const pins = byPair(current.filter(({ pinned }) => pinned === true));
  const held = byPair(current);
  const ranks = new Map(ranksOf(instance).map((rank, at) => [rank, at]));
  const suppliesOf = new Map<string, number[]>();
  for (const [at, { item }] of supply.entries()) {
    const same = suppliesOf.get(item);
    if (same) same.push(at);
    else suppliesOf.set(item, [at]);
  }
  const columns: Columns = { pairs: [], losing: [], lost: [...held.values()].reduce((sum, units) => sum + units, 0) };
  const loses: { pair: number; units: number }[] = [];
  for (const [to, line] of demand.entries()) {
    for (const from of [...new Set(line.accepts.map(({ item }) => item))].flatMap(
      (item) => suppliesOf.get(item) ?? [],
    )) {
      const lot = supply[from];
      if (!lot || !isServing(lot, line)) continue;
      const key = pairKey(lot.id, line.id);
      const units = held.get(key) ?? 0;
      if (units > 0) {
        loses.push({ pair: columns.pairs.length, units });
        columns.lost -= units;
      }
      columns.pairs.push({
        supply: from,
        demand: to,
        rank: ranks.get(line.rank) ?? 0,
        penalty: penaltyOfUnit(lot, line),
        value: valueOfUnit(instance, lot),
        days: daysOfUnit(instance, lot),
        pinned: pins.get(key) ?? 0,
      });
    }
  }
  columns.losing = loses.map((row, at) => ({ ...row, column: columns.pairs.length + at }));
  return columns;
}

function modelOf(highs: Highs, { supply, demand }: AllocationInstance, { pairs, losing }: Columns): Model {
  const rows: { lower: number; upper: number; terms: Terms }[] = [...supply, ...demand].map(({ units }) => ({
    lower: -highs.infinity,
    upper: units,
    terms: { indices: [], values: [] },
  }));
  const add = (row: number, column: number) => {
    rows[row]?.terms.indices.push(column);
    rows[row]?.terms.values.push(1);
  };
  for (const [column, { supply: from, demand: to }] of pairs.entries()) {
    add(from, column);
    add(supply.length + to, column);
  }
  for (const { pair, column, units } of losing)
    rows.push({ lower: units, upper: highs.infinity, terms: { indices: [pair, column], values: [1, 1] } });
  const numCols = pairs.length + losing.length;
  let end = 0;
  const starts = [0, ...rows.map(({ terms }) => (end += terms.indices.length))];
  const model = highs.createModel({
    numCols,
    numRows: rows.length,
    colCost: new Float64Array(numCols),
    colLower: [...pairs.map(({ pinned }) => pinned), ...losing.map(() => 0)],
    colUpper: new Float64Array(numCols).fill(highs.infinity),
    rowLower: rows.map(({ lower }) => lower),
    rowUpper: rows.map(({ upper }) => upper),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols,
      starts,
      indices: rows.flatMap(({ terms }) => terms.indices),
      values: rows.flatMap(({ terms }) => terms.values),
    },
  });
  model.options.set('output_flag', false);
  return model;
}

/** Goals one by one over one model. */
class Sequence {
  readonly #costs: Float64Array;
  solves = 0;

  constructor(
    private readonly highs: Highs,
    private readonly model: Model,
    columns: number,
    private readonly endsAt: number,
  ) {
    this.#costs = new Float64Array(columns);
  }

  /** Each solve takes up where the one before it ended, which stays feasible: the primal simplex from there was five to ten times as fast as what HiGHS does of itself. */
  takeUp(): void {
    this.model.options.set({ simplex_strategy: PRIMAL, presolve: 'off' });
  }

  /** The least sum of these terms. */
  least({ indices, values }: Terms): number {
    // A goal to which nothing adds is 0 in every answer.
    if (values.every((value) => value === 0)) return 0;
    const seconds = (this.endsAt - performance.now()) / 1000;
    if (seconds <= 0) throw new OutOfTime();
    this.#costs.fill(0);
    for (const [at, column] of indices.entries()) this.#costs[column] = values[at] ?? 0;
    this.model.changeColsCost({ kind: 'range', from: 0, to: this.#costs.length - 1 }, this.#costs);
    if (Number.isFinite(seconds)) this.model.options.set('time_limit', this.model.getRunTime() + seconds);
    this.model.run();
    this.solves += 1;
    const { modelStatus } = this.highs.constants;
    const status = this.model.getModelStatus();
    if (status === modelStatus.timeLimit) throw new OutOfTime();
    if (status !== modelStatus.optimal) throw new Error(`the linear programme ended with status ${status}`);
    const found = this.model.getObjectiveValue();
    const value = Math.round(found);
    if (Math.abs(found - value) > 0.01) throw new Error(`the best of a goal is ${found}, which is no whole number`);
    return value;
  }

  /** The least sum of these terms, from now on fixed. */
  settle(terms: Terms): number {
    const value = this.least(terms);
    this.fix(terms, value);
    return value;
  }

  fix(terms: Terms, value: number): void {
    if (terms.values.some((one) => one !== 0)) this.model.addRow(value, value, terms);
  }
}

export class OutOfTime extends Error {}

function withSequence<T>(
  highs: Highs,
  instance: AllocationInstance,
  columns: Columns,
  seconds: number,
  solve: (sequence: Sequence) => T,
): T {
  const endsAt = performance.now() + seconds * 1000;
  const model = modelOf(highs, instance, columns);
  try {
    return solve(new Sequence(highs, model, columns.pairs.length + columns.losing.length, endsAt));
  } finally {
    model.dispose();
  }
}

/** By rank, less the units that it gets. */
function unfilledOf(instance: AllocationInstance, { pairs }: Columns): Terms[] {
  const ofRank = ranksOf(instance).map((): Terms => ({ indices: [], values: [] }));
  for (const [column, { rank }] of pairs.entries()) {
    ofRank[rank]?.indices.push(column);
    ofRank[rank]?.values.push(-1);
  }
  return ofRank;
}

export interface Solved {
  goals: Goals;
  solves: number;
}

/** Solves the goals in their order. Throws OutOfTime when that takes longer than so many seconds. */
export function solveGoals(highs: Highs, instance: AllocationInstance, seconds = Infinity): Solved {
  const columns = columnsOf(instance);
  const { pairs, losing, lost } = columns;
  if (pairs.length === 0)
    return {
      goals: { filled: ranksOf(instance).map(() => 0), penalty: 0, savedValue: 0, days: 0, moved: lost },
      solves: 0,
    };
  return withSequence(highs, instance, columns, seconds, (sequence) => {
    sequence.takeUp();
    const all = [...pairs.keys()];
    const sum = (unit: 'penalty' | 'value' | 'days', sign: number) =>
      sequence.settle({ indices: all, values: pairs.map((pair) => sign * pair[unit]) });
    const goals: Goals = {
      filled: unfilledOf(instance, columns).map((terms) => 0 - sequence.settle(terms)),
      penalty: sum('penalty', 1),
      savedValue: 0 - sum('value', -1),
      days: sum('days', 1),
      moved: lost + sequence.settle({ indices: losing.map(({ column }) => column), values: losing.map(() => 1) }),
    };
    return { goals, solves: sequence.solves };
  });
}

/** The least penalty alone, with the units of each rank given: one programme, solved as HiGHS does of itself. Throws OutOfTime. */
export function solvePenalty(
  highs: Highs,
  instance: AllocationInstance,
  filled: readonly number[],
  seconds = Infinity,
): { penalty: number; solves: number } {
  const columns = columnsOf(instance);
  return withSequence(highs, instance, columns, seconds, (sequence) => {
    for (const [rank, terms] of unfilledOf(instance, columns).entries()) sequence.fix(terms, 0 - (filled[rank] ?? 0));
    const penalty = sequence.least({
      indices: [...columns.pairs.keys()],
      values: columns.pairs.map((pair) => pair.penalty),
    });
    return { penalty, solves: sequence.solves };
  });
}
