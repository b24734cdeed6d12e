import type { ContainerKind, HandlingRule, RootHabit } from '@rootclock/domain';
import { plural } from './words.ts';

const rootHabits: Record<RootHabit, string> = { taproot: 'taproot', fibrous: 'fibrous roots', rhizome: 'rhizomes', tuber: 'tuber or corm', woody: 'woody roots' };

const handling: Record<HandlingRule, string> = {
  'leave-root-ball-intact': 'Leave the root ball whole: a broken taproot can kill the plant.',
  'may-loosen-root-ball': 'The root ball may be loosened.',
  'may-divide': 'May be divided.',
  'no-spray-host': 'Caterpillars feed on it: no spray and no soap.',
  'keep-crown-clear': 'Keep compost and mulch off the crown.',
  'no-compost': 'No compost in the planting hole.',
  'protect-from-browse': 'Protect it from rabbits and deer.',
  'keep-from-livestock': 'Never beside livestock or hay.',
  'wear-gloves': 'Wear gloves: its sap irritates the skin and harms the eye.',
  'plant-shallow': 'Plant it shallow.',
};

const containerKinds: Record<ContainerKind, string> = { tray: 'tray', pot: 'pot', flat: 'flat or bundle', ground: 'in the ground' };

export const plants = {
  rootHabits,
  handling,
  containerKinds,
  picker: {
    label: 'Plant',
    placeholder: 'Scientific or common name',
    ambiguous: (text: string, count: number) => plural(count, { one: `“${text}” could mean # plant here. Choose it by its scientific name.`, other: `“${text}” could mean # plants here. Choose by the scientific name.` }),
    nearMiss: (name: string) => `Perhaps you mean ${name}`,
    calledHere: (name: string, code: string) => `${name} · ${code}`,
    unknown: (text: string) => `No plant here is called “${text}”. It may be retired, or not added yet.`,
  },
  containerPicker: { label: 'Container', placeholder: 'Name, code or size', cells: (count: number) => plural(count, { one: '# cell', other: '# cells' }), deep: (depth: string) => `${depth} deep` },
};
