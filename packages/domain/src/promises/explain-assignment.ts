import { InputError } from '../kernel/input.ts';
import { compareText } from '../kernel/text.ts';
import { requireInstance } from './instance/faults.ts';
import type { AllocationInstance, AllocationSupply, Assignment } from './instance/instance.ts';
import { supplyServes } from './instance/supply-serves.ts';

/**
 * Why a demand holds units of a supply and not others. `only`: nothing else serves it; `rest-is-promised`: all else that serves it is promised;
 * `asked-for`: what else is free would be a less welcome substitute; `leaves-first`: it must leave its pot before all else that is free;
 * `as-good`: something free would do as well.
 */
export const ASSIGNMENT_REASONS = ['only', 'rest-is-promised', 'asked-for', 'leaves-first', 'as-good'] as const;
export type AssignmentReason = (typeof ASSIGNMENT_REASONS)[number];

export interface AssignmentExplanation {
  supply: string;
  units: number;
  reason: AssignmentReason;
  /** The free supply that it was compared with, or null. */
  instead: string | null;
  /** Supplies that serve the demand and must leave their pots sooner, with the demands they are promised to. */
  sooner: { supply: string; demands: string[] }[];
}

const LAST = '9999-99-99';
const leaves = ({ plantByOn }: AllocationSupply) => plantByOn ?? LAST;

/** Explains each supply that a demand holds under some assignments. Throws InputError for an unknown demand. */
export function explainAssignments(
  input: AllocationInstance,
  demandId: string,
  assignments: readonly Assignment[],
): AssignmentExplanation[] {
  const instance = requireInstance(input);
  const demand = instance.demand.find(({ id }) => id === demandId);
  if (demand === undefined) throw new InputError('demandId', 'must name a demand of the instance', { id: demandId });
  const serving = instance.supply.flatMap((supply) => {
    const answer = supplyServes(supply, demand);
    return answer.serves && supply.units > 0 ? [{ supply, penalty: answer.penalty }] : [];
  });
  const given = new Map<string, number>();
  for (const { supply, units } of assignments) given.set(supply, (given.get(supply) ?? 0) + units);
  const free = serving
    .filter(({ supply }) => supply.units > (given.get(supply.id) ?? 0))
    .sort(
      (a, b) =>
        a.penalty - b.penalty ||
        compareText(leaves(a.supply), leaves(b.supply)) ||
        compareText(a.supply.id, b.supply.id),
    );

  return assignments
    .filter((row) => row.demand === demandId)
    .sort((a, b) => compareText(a.supply, b.supply))
    .map((row): AssignmentExplanation => {
      const own = instance.supply.find(({ id }) => id === row.supply);
      const others = serving.filter(({ supply }) => supply.id !== row.supply);
      const [instead] = free.filter(({ supply }) => supply.id !== row.supply);
      const penalty = serving.find(({ supply }) => supply.id === row.supply)?.penalty ?? 0;
      const sooner = others
        .filter(({ supply }) => own !== undefined && leaves(supply) < leaves(own))
        .map(({ supply }) => ({
          supply: supply.id,
          demands: [
            ...new Set(
              assignments
                .filter((other) => other.supply === supply.id && other.demand !== demandId)
                .map((other) => other.demand),
            ),
          ].sort(compareText),
        }))
        .filter(({ demands }) => demands.length > 0);
      return { supply: row.supply, units: row.units, reason: reasonOf(), instead: instead?.supply.id ?? null, sooner };

      function reasonOf(): AssignmentReason {
        if (others.length === 0) return 'only';
        if (!instead) return 'rest-is-promised';
        if (instead.penalty > penalty) return 'asked-for';
        return own !== undefined && leaves(own) < leaves(instead.supply) ? 'leaves-first' : 'as-good';
      }
    });
}
