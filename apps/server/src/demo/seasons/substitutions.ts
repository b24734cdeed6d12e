import type { Stage } from '../stage.ts';

/** What this invented nursery lets stand in: another size readily, another native milkweed sooner than a plant of the same habit. */
const SUBSTITUTIONS = [
  { kind: 'another-size', reach: {}, penalty: 2, note: 'Clients mind the size less than the plant' },
  { kind: 'same-genus', reach: { genus: 'Asclepias' }, penalty: 5, note: 'Any milkweed of the region feeds monarchs' },
  { kind: 'same-habit', reach: {}, penalty: 12, note: '' },
] as const;

export function planSubstitutions(stage: Stage): void {
  stage.on(stage.today, async () => {
    for (const rule of SUBSTITUTIONS)
      await stage.as('grower').orders.addSubstitutionRule(stage.sent({ ruleId: stage.chance.id(), ...rule }));
  });
}
