/** About a hundred rules: those for any container first, the others by their container, so that a grower finds the one that is meant. */
import type { potLife } from '@rootclock/contracts';

export interface RuleGroup {
  containerId: string | null;
  containerName: string | null;
  rules: potLife.RuleRow[];
}

/** Groups in the order in which the rules come. */
export function groupRules(rules: readonly potLife.RuleRow[]): RuleGroup[] {
  const groups = new Map<string | null, RuleGroup>();
  for (const rule of rules) {
    const key = rule.containerId;
    const group = groups.get(key) ?? { containerId: key, containerName: rule.containerName, rules: [] };
    group.rules.push(rule);
    groups.set(key, group);
  }
  return [...groups.values()].sort((a, b) => Number(a.containerId !== null) - Number(b.containerId !== null));
}
