import { InputError, requireOneOf, requireText, requireWhole } from '../kernel/input.ts';
import { requireSpan } from '../kernel/spans.ts';
import { compareText } from '../kernel/text.ts';
import { ROOT_HABITS, type RootHabit } from '../plants/traits.ts';

/**
 * What a limit counts from. `confined`: since roots entered an individual cell or pot. `container`: since the plant
 * entered this container. `no-winter`: this plant in this container may not stand through winter.
 */
export const POT_LIFE_BASES = ['confined', 'container', 'no-winter'] as const;
export type PotLifeBasis = (typeof POT_LIFE_BASES)[number];

/** Whom a rule reaches. Only the combinations of POT_LIFE_REACHES mean something; all others are refused. */
export interface PotLifeReach {
  lotId?: string | null;
  plantId?: string | null;
  containerId?: string | null;
  genus?: string | null;
  rootHabit?: RootHabit | null;
}

/** Leave to stand through winter past the limit: see `plantBy`. */
export interface WinterCarry {
  /** The most days from the limit to the next planting window's opening. */
  maxDays: number;
  /** Days after that opening by which the carried plants must be out. */
  graceDays: number;
}

export interface PotLifeRule {
  id: string;
  basis: PotLifeBasis;
  /** ISO 8601 span from the clock's start ('P1Y', 'P170D'). Null with `no-winter` and only there: its limit is the freeze day. */
  span: string | null;
  reach: PotLifeReach;
  winterCarry?: WinterCarry | null;
}

/**
 * The reaches a rule can have, the most particular first. A container by itself is none of them: what a pot does to roots
 * depends on the roots, so such a limit is written for a root habit in that container. Neither is a rule for everything.
 */
export const POT_LIFE_REACHES = [
  'lot',
  'plant-container',
  'plant',
  'genus',
  'root-habit-container',
  'root-habit',
] as const;
export type PotLifeReachName = (typeof POT_LIFE_REACHES)[number];

const REACH_BY_PARTS: Readonly<Record<string, PotLifeReachName>> = {
  lotId: 'lot',
  'plantId+containerId': 'plant-container',
  plantId: 'plant',
  genus: 'genus',
  'containerId+rootHabit': 'root-habit-container',
  rootHabit: 'root-habit',
};
const REACH_PARTS = ['lotId', 'plantId', 'containerId', 'genus', 'rootHabit'] as const;

/** What stands in the pot: a lot, or a batch in cells (which has no lot yet). */
export interface PotLifeSubject {
  lotId: string | null;
  plantId: string;
  containerId: string | null;
  genus: string;
  rootHabit: RootHabit | null;
}

/** The name of a rule's reach. Throws InputError for one that has no place in the order, such as a container by itself. */
export function reachName(reach: PotLifeReach): PotLifeReachName {
  const parts = REACH_PARTS.filter((part) => reach[part] !== undefined && reach[part] !== null);
  const name = REACH_BY_PARTS[parts.join('+')];
  if (name === undefined) {
    throw new InputError(
      'reach',
      'must be a lot, a plant, a plant in a container, a genus, a root habit, or a root habit in a container',
      {
        parts,
      },
    );
  }
  return name;
}

/** Returns the rule when it is one that can be applied. Throws InputError naming the part that is wrong. */
export function requireRule(rule: PotLifeRule): PotLifeRule {
  requireText('id', rule.id);
  requireOneOf('basis', rule.basis, POT_LIFE_BASES);
  reachName(rule.reach);
  if (rule.reach.rootHabit !== undefined && rule.reach.rootHabit !== null)
    requireOneOf('rootHabit', rule.reach.rootHabit, ROOT_HABITS);
  if (rule.basis !== 'no-winter') requireSpan('span', rule.span);
  else if (rule.span !== null)
    throw new InputError('span', 'must be empty for a no-winter rule, whose limit is the freeze day');
  if (rule.winterCarry !== undefined && rule.winterCarry !== null) {
    if (rule.basis === 'no-winter')
      throw new InputError('winterCarry', 'cannot be allowed by a rule that forbids the winter');
    requireWhole('maxDays', rule.winterCarry.maxDays, 0, 366);
    requireWhole('graceDays', rule.winterCarry.graceDays, 0, 366);
  }
  return rule;
}

function reaches({ reach }: PotLifeRule, subject: PotLifeSubject): boolean {
  return (
    (reach.lotId == null || reach.lotId === subject.lotId) &&
    (reach.plantId == null || reach.plantId === subject.plantId) &&
    (reach.containerId == null || reach.containerId === subject.containerId) &&
    (reach.genus == null || reach.genus.toLowerCase() === subject.genus.toLowerCase()) &&
    (reach.rootHabit == null || reach.rootHabit === subject.rootHabit)
  );
}

/**
 * Of rules that all reach the same plants, the most particular of each basis, in the order of POT_LIFE_BASES. Two
 * equally particular ones are settled by id, so that the answer never depends on the order of reading. Throws
 * InputError for a rule that cannot be applied.
 */
export function mostParticular(rules: readonly PotLifeRule[]): PotLifeRule[] {
  const ranked = rules
    .map((rule) => ({ rule: requireRule(rule), rank: POT_LIFE_REACHES.indexOf(reachName(rule.reach)) }))
    .sort((a, b) => a.rank - b.rank || compareText(a.rule.id, b.rule.id));
  return POT_LIFE_BASES.flatMap((basis) => ranked.find(({ rule }) => rule.basis === basis)?.rule ?? []);
}

/** The rules that count for a lot or batch: of those that reach it, the most particular of each basis. */
export function winningRules(rules: readonly PotLifeRule[], subject: PotLifeSubject): PotLifeRule[] {
  return mostParticular(rules.filter((rule) => reaches(requireRule(rule), subject)));
}
