import { referenceRules, referenceWindows } from '../../../../reference/index.ts';
import { referenceId } from '../../../plants/reference-load.ts';

export interface NewRule {
  id: string;
  basis: string;
  span: string | null;
  genus: string | null;
  rootHabit: string | null;
  containerId: string | null;
  carryMaxDays: number | null;
  carryGraceDays: number | null;
  standing: string;
  source: string | null;
  note: string;
}

export function ruleRows(nurseryId: string, containerIds: ReadonlyMap<string, string>): NewRule[] {
  return referenceRules.map(({ code, basis, span, reach, winterCarry, standing, source, note }) => ({
    id: referenceId(nurseryId, 'rule', code),
    basis,
    span,
    standing,
    source,
    note,
    genus: reach.genus ?? null,
    rootHabit: reach.rootHabit ?? null,
    containerId: reach.containerCode ? (containerIds.get(reach.containerCode) ?? null) : null,
    carryMaxDays: winterCarry?.maxDays ?? null,
    carryGraceDays: winterCarry?.graceDays ?? null,
  }));
}

export const windowRows = (nurseryId: string) =>
  referenceWindows.map(({ code, ...window }) => ({ ...window, id: referenceId(nurseryId, 'window', code) }));
